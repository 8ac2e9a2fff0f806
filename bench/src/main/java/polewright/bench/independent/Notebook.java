package polewright.bench.independent;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;

/**
 * A night's log as the person wrote it, and beside it the log that they would have written without their mistake, for
 * comparison.
 */
final class Notebook {
    private final SortedMap<Long, NightEvent> amiss = new TreeMap<>();
    private Told told;
    private final Told truly;
    private final NightState.ModelCache models = new NightState.ModelCache();
    private final List<LoggedEvent> written = new ArrayList<>();
    private final List<LoggedEvent> right = new ArrayList<>();

    Notebook(Told told, Told truly) {
        this.told = told;
        this.truly = truly;
    }

    /** One and the same in both, each with its own site, clock and rig. */
    NightState write(Instant at, Function<Told, NightEvent> entry) {
        return write(at, entry.apply(told), entry.apply(truly));
    }

    /**
     * Written so, and meant so.
     *
     * @throws InputRefused when it is refused as it is written; then it is in neither log
     */
    NightState write(Instant at, NightEvent asWritten, NightEvent asItWas) {
        NightState night = write(at, asWritten);
        meant(at, asItWas);
        if (!asWritten.equals(asItWas)) {
            amiss.put((long) written.size(), asItWas);
        }
        return night;
    }

    /**
     * Written, though nothing of it is true.
     *
     * @throws InputRefused as above
     */
    NightState write(Instant at, NightEvent asWritten) {
        written.add(new LoggedEvent(written.size() + 1L, told.clock(at), asWritten));
        try {
            return NightState.of(written, told.clock(at), models);
        } catch (InputRefused refused) {
            written.remove(written.size() - 1);
            throw refused;
        }
    }

    /** True, though nothing of it is written. */
    void meant(Instant at, NightEvent asItWas) {
        right.add(new LoggedEvent(right.size() + 1L, truly.clock(at), asItWas));
    }

    /** From here on what is told is true. */
    void tellTruly() {
        told = truly;
    }

    Told told() {
        return told;
    }

    Told truly() {
        return truly;
    }

    /** What should have been written, by the number of what was. */
    SortedMap<Long, NightEvent> amiss() {
        return Collections.unmodifiableSortedMap(amiss);
    }

    /** Events written so far. */
    List<LoggedEvent> written() {
        return List.copyOf(written);
    }

    /** What should have been written so far. */
    List<LoggedEvent> right() {
        return List.copyOf(right);
    }
}
