package polewright.session;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import polewright.session.event.Correction;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;

/**
 * Corrects times for an error of the computer's clock. An event's own time is shifted too if it came from the same
 * clock; a typed time, read from a watch, is not, and neither are the times of camera frames.
 */
final class ClockCorrections {
    // Anything measured and logged in one go has both times from the clock.
    private static final Duration AT_ONCE = Duration.ofMinutes(1);

    private ClockCorrections() {}

    /**
     * The events with corrected times, without the corrections themselves.
     *
     * @param standing the events not withdrawn
     */
    static List<LoggedEvent> applied(List<LoggedEvent> standing) {
        List<Correction.ClockCorrected> corrections = standing.stream()
                .map(LoggedEvent::event)
                .filter(Correction.ClockCorrected.class::isInstance)
                .map(Correction.ClockCorrected.class::cast)
                .toList();
        if (corrections.isEmpty()) {
            return standing;
        }
        return standing.stream()
                .filter(logged -> !(logged.event() instanceof Correction.ClockCorrected))
                .map(logged -> corrected(logged, corrections))
                .toList();
    }

    private static LoggedEvent corrected(LoggedEvent logged, List<Correction.ClockCorrected> corrections) {
        Duration shift = corrections.stream()
                .filter(one -> one.seq() <= logged.seq() && logged.seq() <= one.last())
                .map(Correction.ClockCorrected::shift)
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
        return Stream.of(measured.seenAt(), measured.endedAt())
                .anyMatch(time -> Duration.between(time, at).abs().compareTo(AT_ONCE) <= 0);
    }
}
