package polewright.app.watch;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import polewright.app.LogEntry;
import polewright.app.Workbench;
import polewright.axis.sighting.TurnedFrames;
import polewright.night.NightState;
import polewright.night.StandingEvents;
import polewright.night.event.LoggedEvent;
import polewright.night.event.NightEvent;
import polewright.night.log.NightId;
import polewright.night.log.NightLog;

/** What a watch puts into the log: the frames that tell the axis, and where the screws took it. */
public final class WatchLog {
    private final Workbench workbench;
    private final Supplier<NightLog> log;
    private final NightState.ModelCache models = new NightState.ModelCache();
    private Optional<Long> own;

    /**
     * A watch's entries.
     *
     * @param log opens it, each time that something is added
     * @param own number of the sighting that the watch goes on from, if it does: in whose place a better one stands
     */
    WatchLog(Workbench workbench, Supplier<NightLog> log, Optional<Long> own) {
        this.workbench = workbench;
        this.log = log;
        this.own = own;
    }

    /**
     * What was logged, and what the night comes to with it.
     *
     * @param moved that the axis was moved, if that had to be logged first
     */
    public record Entry(LoggedEvent event, Optional<LoggedEvent> moved, NightState night) {}

    /** The frames that tell the axis, in place of fewer that were logged before. */
    Entry logAxis(TurnedFrames frames) {
        try (NightLog opened = log.get()) {
            NightId night = LogEntry.latestNight(opened);
            Optional<Long> fewer = own.filter(seq -> stands(opened.events(night), seq));
            // What was logged is taken back only when what replaces it is in the log.
            LoggedEvent taken = append(opened, night, new NightEvent.SightingTaken(frames));
            own = Optional.of(taken.seq());
            fewer.ifPresent(seq -> append(opened, night, new NightEvent.Withdrawn(seq)));
            return new Entry(taken, Optional.empty(), state(opened, night));
        }
    }

    /** What was logged stands; the axis is found again, and no longer in its place. */
    void startAfresh() {
        own = Optional.empty();
    }

    /**
     * Where the screws have taken the axis. How far each was turned is not known here, so the axis counts as moved by an
     * unknown way, unless the turns were logged meanwhile.
     */
    Entry logAfterScrews(TurnedFrames frames) {
        try (NightLog opened = log.get()) {
            NightId night = LogEntry.latestNight(opened);
            Optional<LoggedEvent> moved = turnsWereLogged(opened.events(night))
                    ? Optional.empty()
                    : Optional.of(append(opened, night, new NightEvent.Knocked()));
            LoggedEvent taken = append(opened, night, new NightEvent.SightingTaken(frames));
            return new Entry(taken, moved, state(opened, night));
        }
    }

    private boolean turnsWereLogged(List<LoggedEvent> events) {
        return StandingEvents.among(events).asMeant().stream()
                .filter(e -> e.seq() > own.orElse(Long.MAX_VALUE))
                .anyMatch(e -> e.event() instanceof NightEvent.ScrewsTurned || e.event() instanceof NightEvent.Knocked);
    }

    private static boolean stands(List<LoggedEvent> events, long seq) {
        return StandingEvents.among(events).has(seq);
    }

    private LoggedEvent append(NightLog opened, NightId night, NightEvent event) {
        return LogEntry.append(opened, night, event, workbench.now(), models);
    }

    private NightState state(NightLog opened, NightId night) {
        return NightState.of(opened.events(night), workbench.now(), models);
    }
}
