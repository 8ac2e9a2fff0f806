package polewright.session;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import polewright.alignment.sighting.StarDrift;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;

/**
 * Times as they were, where the computer's clock was off. An event's own time moves with it if it was taken from the same
 * clock; one that was typed, from a watch, stays, and so do the times of a camera's frames.
 */
final class ClockCorrections {
    // What is measured and logged in one go has both times from the clock.
    private static final Duration AT_ONCE = Duration.ofMinutes(1);

    private ClockCorrections() {}

    /**
     * The events with the times that they had, corrections themselves left out.
     *
     * @param standing those that count
     */
    static List<LoggedEvent> applied(List<LoggedEvent> standing) {
        List<NightEvent.ClockCorrected> corrections = standing.stream()
                .map(LoggedEvent::event)
                .filter(NightEvent.ClockCorrected.class::isInstance)
                .map(NightEvent.ClockCorrected.class::cast)
                .toList();
        if (corrections.isEmpty()) {
            return standing;
        }
        return standing.stream()
                .filter(logged -> !(logged.event() instanceof NightEvent.ClockCorrected))
                .map(logged -> corrected(logged, corrections))
                .toList();
    }

    private static LoggedEvent corrected(LoggedEvent logged, List<NightEvent.ClockCorrected> corrections) {
        Duration shift = corrections.stream()
                .filter(one -> one.seq() <= logged.seq() && logged.seq() <= one.last())
                .map(NightEvent.ClockCorrected::shift)
                .reduce(Duration.ZERO, Duration::plus);
        if (shift.isZero()) {
            return logged;
        }
        NightEvent event =
                logged.event() instanceof NightEvent.Measurement measured && isByTheClock(measured, logged.at())
                        ? measured.movedBy(shift)
                        : logged.event();
        return new LoggedEvent(logged.seq(), logged.at().plus(shift), event);
    }

    /** A drift is logged when it ends. */
    private static boolean isByTheClock(NightEvent.Measurement measured, Instant at) {
        Instant seen = measured.seenAt();
        Instant ended =
                measured instanceof NightEvent.SightingTaken taken && taken.sighting() instanceof StarDrift drift
                        ? seen.plus(drift.length())
                        : seen;
        return Stream.of(seen, ended)
                .anyMatch(time -> Duration.between(time, at).abs().compareTo(AT_ONCE) <= 0);
    }
}
