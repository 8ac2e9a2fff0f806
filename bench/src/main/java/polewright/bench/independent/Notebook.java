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
 * A night's log as the person wrote it, along with the log that they would have written without their mistake, for
 * comparison.
 */
final class Notebook {
    private final SortedMap<Long, NightEvent> corrections = new TreeMap<>();
    private Told stated;
    private final Told truly;
    private final NightState.ModelCache models = new NightState.ModelCache();
    private final List<LoggedEvent> written = new ArrayList<>();
    private final List<LoggedEvent> right = new ArrayList<>();

    Notebook(Told stated, Told truly) {
        this.stated = stated;
        this.truly = truly;
    }

    /** The same entry in both, each with its own site, clock and rig. */
    NightState write(Instant at, Function<Told, NightEvent> entry) {
        return write(at, entry.apply(stated), entry.apply(truly));
    }

    /**
     * Writes one entry in the log and the correct one in the other.
     *
     * @throws InputRefused when it is refused as it is written; then it is in neither log
     */
    NightState write(Instant at, NightEvent asWritten, NightEvent asItWas) {
        NightState night = write(at, asWritten);
        recordTruth(at, asItWas);
        if (!asWritten.equals(asItWas)) {
            corrections.put((long) written.size(), asItWas);
        }
        return night;
    }

    /**
     * Writes an entry that corresponds to nothing true.
     *
     * @throws InputRefused as above
     */
    NightState write(Instant at, NightEvent asWritten) {
        written.add(new LoggedEvent(written.size() + 1L, stated.clock(at), asWritten));
        try {
            return NightState.of(written, stated.clock(at), models);
        } catch (InputRefused refused) {
            written.remove(written.size() - 1);
            throw refused;
        }
    }

    /** Records a true event that was not logged. */
    void recordTruth(Instant at, NightEvent asItWas) {
        right.add(new LoggedEvent(right.size() + 1L, truly.clock(at), asItWas));
    }

    /** From here on what is stated is true. */
    void stateTruth() {
        stated = truly;
    }

    Told stated() {
        return stated;
    }

    Told truly() {
        return truly;
    }

    /** What should have been logged, by the number of what was. */
    SortedMap<Long, NightEvent> corrections() {
        return Collections.unmodifiableSortedMap(corrections);
    }

    /** Events logged so far. */
    List<LoggedEvent> written() {
        return List.copyOf(written);
    }

    /** What should have been logged so far. */
    List<LoggedEvent> right() {
        return List.copyOf(right);
    }
}
