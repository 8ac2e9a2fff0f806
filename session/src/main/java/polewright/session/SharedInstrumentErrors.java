package polewright.session;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import polewright.alignment.advice.SightingKind;
import polewright.alignment.sighting.SharedInstrument;
import polewright.alignment.sighting.Sighting;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;

/**
 * How often each instrument was read while the tripod was in one place. The effects of iron near the compass, a scale's
 * own error and a base out of level are the same in every reading, so n readings count as one.
 *
 * @param readings by event, the number of readings of its instrument, in the same setting-down, with the same error
 */
record SharedInstrumentErrors(Map<Long, Integer> readings) {
    private static final int EXACTLY_COUNTED = 8;

    static SharedInstrumentErrors of(List<LoggedEvent> standing) {
        Map<Long, Integer> readings = new HashMap<>();
        Map<SightingKind, List<Long>> here = new EnumMap<>(SightingKind.class);
        for (LoggedEvent logged : standing) {
            if (logged.event() instanceof NightEvent.Knocked) {
                count(here, readings);
                here.clear();
            } else {
                logged.event()
                        .asSighting()
                        .flatMap(SharedInstrumentErrors::reading)
                        .ifPresent(kind -> here.computeIfAbsent(kind, k -> new ArrayList<>())
                                .add(logged.seq()));
            }
        }
        count(here, readings);
        return new SharedInstrumentErrors(Map.copyOf(readings));
    }

    private static void count(Map<SightingKind, List<Long>> here, Map<Long, Integer> readings) {
        here.values().forEach(alike -> alike.forEach(seq -> readings.put(seq, shared(alike.size()))));
    }

    /**
     * The number of readings assumed to share an error when there are n. Each further reading reduces the weight of all
     * earlier ones. With many readings that is done in steps, so that a long night need not be recomputed for each; in
     * between, together they count as slightly less than one, never more.
     */
    private static int shared(int n) {
        return n <= EXACTLY_COUNTED ? n : 2 * Integer.highestOneBit(n - 1);
    }

    /** Whether the readings counted in another are counted the same here. */
    boolean agreesWith(SharedInstrumentErrors earlier) {
        return earlier.readings.entrySet().stream()
                .allMatch(reading -> reading.getValue().equals(readings.get(reading.getKey())));
    }

    /** Whether an event is a reading of an instrument that shares its error with others. */
    static boolean isRead(LoggedEvent logged) {
        return logged.event()
                .asSighting()
                .flatMap(SharedInstrumentErrors::reading)
                .isPresent();
    }

    /** The instrument whose error a sighting shares with others of its kind; empty if there is none. */
    static Optional<SightingKind> reading(Sighting sighting) {
        return sighting.instrumentReading().map(reading -> kind(reading.instrument()));
    }

    private static SightingKind kind(SharedInstrument instrument) {
        return switch (instrument) {
            case COMPASS -> SightingKind.COMPASS;
            case LEVEL_AND_SCALE -> SightingKind.LEVEL_AND_SCALE;
            case SHADOW -> SightingKind.SHADOW;
        };
    }

    /** The sighting with its uncertainty multiplied by √n, so that all n together count as one. */
    Sighting sharingItsError(long seq, Sighting sighting) {
        double wider = Math.sqrt(readings.getOrDefault(seq, 1));
        if (wider == 1) {
            return sighting;
        }
        return sighting.instrumentReading()
                .map(reading -> reading.withSigma(widened(reading.sigma(), wider)))
                .orElse(sighting);
    }

    private static Angle widened(Angle sigma, double factor) {
        Angle widest = Angle.ofDegrees(60);
        Angle wider = sigma.times(factor);
        return wider.compareTo(widest) > 0 ? widest : wider;
    }
}
