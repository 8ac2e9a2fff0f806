package polewright.app.command;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import polewright.app.Workbench;
import polewright.axis.sighting.TurnedFrames;
import polewright.night.NightState;
import polewright.night.event.LoggedEvent;
import polewright.night.event.NightEvent;
import polewright.night.log.NightId;
import polewright.night.log.NightLog;

/** What a watch puts into the log: the frames that tell the axis, and where the screws took it. */
final class WatchLog {
    private final Workbench workbench;
    private final LogOption log;
    private Optional<Long> own = Optional.empty();

    WatchLog(Workbench workbench, LogOption log) {
        this.workbench = workbench;
        this.log = log;
    }

    /** What was logged, and what the night comes to with it. */
    record Entry(LoggedEvent event, NightState night) {}

    /** The frames that tell the axis, in place of fewer that were logged before. */
    Entry logAxis(TurnedFrames frames) {
        try (NightLog opened = log.openExisting(workbench)) {
            NightId night = LogOption.latest(opened);
            own.filter(seq -> stands(opened.events(night), seq))
                    .ifPresent(seq -> append(opened, night, new NightEvent.Withdrawn(seq)));
            Entry entry = append(opened, night, new NightEvent.SightingTaken(frames));
            own = Optional.of(entry.event().seq());
            return entry;
        }
    }

    /**
     * Where the screws have taken the axis. How far each was turned is not known here, so the axis counts as moved by an
     * unknown way, unless the turns were logged meanwhile.
     */
    Entry logAfterScrews(TurnedFrames frames) {
        try (NightLog opened = log.openExisting(workbench)) {
            NightId night = LogOption.latest(opened);
            if (!turnsWereLogged(opened.events(night))) {
                append(opened, night, new NightEvent.Knocked());
            }
            return append(opened, night, new NightEvent.SightingTaken(frames));
        }
    }

    private boolean turnsWereLogged(List<LoggedEvent> events) {
        return NightState.standing(events).stream()
                .filter(e -> e.seq() > own.orElse(Long.MAX_VALUE))
                .anyMatch(e -> e.event() instanceof NightEvent.ScrewsTurned || e.event() instanceof NightEvent.Knocked);
    }

    private static boolean stands(List<LoggedEvent> events, long seq) {
        return NightState.standing(events).stream().anyMatch(e -> e.seq() == seq);
    }

    private Entry append(NightLog opened, NightId night, NightEvent event) {
        NightState.ModelCache models = new NightState.ModelCache();
        Instant now = workbench.now();
        LoggedEvent done = LogEntry.append(opened, night, event, now, models);
        return new Entry(done, NightState.of(opened.events(night), now, models));
    }
}
