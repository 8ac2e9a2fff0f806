package polewright.operations.seasons;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import polewright.planning.seasons.NightRecord;
import polewright.planning.seasons.Pier;
import polewright.session.NightId;
import polewright.session.NightSummary;
import polewright.session.StandingEvents;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.Interruption;
import polewright.store.NightLog;

/**
 * The results of the nights of a log.
 *
 * @param records of one pier, each night once: a copy of a night, imported from a file, is the same night
 * @param unreadable nights that cannot be computed; they stay in the log unchanged
 */
public record LoggedNights(List<NightRecord> records, List<NightId> unreadable) {
    public LoggedNights {
        records = List.copyOf(records);
        unreadable = List.copyOf(unreadable);
    }

    /** Reads them. */
    public static LoggedNights of(Pier pier, NightLog opened) {
        List<NightRecord> records = new ArrayList<>();
        List<NightId> unreadable = new ArrayList<>();
        Set<List<LoggedEvent>> seen = new HashSet<>();
        // The oldest first, so that of a night and its copy the night is kept.
        List<NightSummary> nights = new ArrayList<>(opened.nights());
        nights.sort(Comparator.comparing(night -> night.id().number()));
        for (NightSummary night : nights) {
            Interruption.check();
            try {
                List<LoggedEvent> events = opened.events(night.id());
                Optional<NightEvent.Begun> begun = StandingEvents.beginning(events);
                if (begun.filter(pier::holds).isPresent() && seen.add(events)) {
                    records.add(NightRecord.of(night.id(), events));
                }
            } catch (InputRefused damaged) {
                unreadable.add(night.id());
            }
        }
        return new LoggedNights(records, unreadable);
    }
}
