package polewright.session;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;

/** Applies the last correction of each turn and measurement, at the place and time of the original. */
final class ReplacedEvents {
    private ReplacedEvents() {}

    /**
     * The corrected events, without the corrections themselves.
     *
     * @param standing the events not withdrawn
     * @throws InputRefused if the event corrected is not a turn, or not a measurement
     */
    static List<LoggedEvent> applied(List<LoggedEvent> standing) {
        Map<Long, NightEvent> meant = new HashMap<>();
        for (LoggedEvent logged : standing) {
            if (logged.event() instanceof NightEvent.TurnCorrected corrected) {
                meant.put(corrected.seq(), corrected.meant());
            } else if (logged.event() instanceof NightEvent.MeasurementCorrected corrected) {
                meant.put(corrected.seq(), corrected.meant());
            }
        }
        if (meant.isEmpty()) {
            return standing;
        }
        return standing.stream()
                .filter(logged -> !replaces(logged.event()))
                .map(logged -> meant.containsKey(logged.seq()) ? replaced(logged, meant.get(logged.seq())) : logged)
                .toList();
    }

    private static boolean replaces(NightEvent event) {
        return event instanceof NightEvent.TurnCorrected || event instanceof NightEvent.MeasurementCorrected;
    }

    private static LoggedEvent replaced(LoggedEvent logged, NightEvent meant) {
        if (meant instanceof NightEvent.ScrewsTurned && !(logged.event() instanceof NightEvent.ScrewsTurned)) {
            throw new InputRefused(
                    "event " + logged.seq() + " is not a turn of the screws, so no turn can replace it",
                    "give the number of a turn, as the log shows it");
        }
        if (meant instanceof NightEvent.Measurement && !(logged.event() instanceof NightEvent.Measurement)) {
            throw new InputRefused(
                    "event " + logged.seq() + " is neither a sighting nor a centring, so nothing can replace it",
                    "give the number of a sighting, as the log shows it");
        }
        return new LoggedEvent(logged.seq(), logged.at(), meant);
    }
}
