package polewright.app.watch;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import polewright.app.JobFailed;
import polewright.app.LogEntry;
import polewright.app.Workbench;
import polewright.axis.sighting.TurnedFrames;
import polewright.night.NightState;
import polewright.night.StandingEvents;
import polewright.night.event.LoggedEvent;
import polewright.night.event.NightEvent;
import polewright.night.log.Known;
import polewright.night.log.NightId;
import polewright.night.log.NightLog;

/** What a watch puts into the log: the frames that tell the axis, and where the screws took it. */
public final class WatchLog {
    private final Workbench workbench;
    private final Supplier<NightLog> log;
    private final NightId night;
    private final NightState.ModelCache models = new NightState.ModelCache();
    private Optional<Long> own;

    private WatchLog(Workbench workbench, Supplier<NightLog> log, NightId night, Optional<Long> own) {
        this.workbench = workbench;
        this.log = log;
        this.night = night;
        this.own = own;
    }

    /**
     * A watch's entries in the night that is the last one now.
     *
     * @param log opens it, each time that something is added
     * @param own number of the sighting that the watch goes on from, if it does: in whose place a better one stands
     */
    static WatchLog ofTonight(Workbench workbench, Supplier<NightLog> log, Optional<Long> own) {
        try (NightLog opened = log.get()) {
            return new WatchLog(workbench, log, LogEntry.latestNight(opened), own);
        }
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
            requireTonight(opened);
            Optional<Long> fewer = own.filter(seq -> stands(opened.events(night), seq));
            List<NightEvent> events = new ArrayList<>(List.of(new NightEvent.SightingTaken(frames)));
            fewer.ifPresent(seq -> events.add(new NightEvent.Withdrawn(seq)));
            LoggedEvent taken = append(opened, events).get(0);
            own = Optional.of(taken.seq());
            return new Entry(taken, Optional.empty(), state(opened));
        }
    }

    /** What was logged stands; the axis is found again, and no longer in its place. */
    void startAfresh() {
        own = Optional.empty();
    }

    /**
     * Where the screws have taken the axis. How far each was turned is not known here, so the axis counts as moved by an
     * unknown way, unless the turns were logged meanwhile. Of a night that is over it is kept in that night.
     */
    Entry logAfterScrews(TurnedFrames frames) {
        try (NightLog opened = log.get()) {
            NightEvent taken = new NightEvent.SightingTaken(frames);
            if (turnsWereLogged(opened.events(night))) {
                return new Entry(append(opened, List.of(taken)).get(0), Optional.empty(), state(opened));
            }
            List<LoggedEvent> both = append(opened, List.of(new NightEvent.Knocked(), taken));
            return new Entry(both.get(1), Optional.of(both.get(0)), state(opened));
        }
    }

    /** The frames of another night are not this one's, though they may fall into the same folder. */
    private void requireTonight(NightLog opened) {
        if (!LogEntry.latestNight(opened).equals(night)) {
            throw new JobFailed("another night has begun since this watch was started: start it again for that one.");
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

    private List<LoggedEvent> append(NightLog opened, List<NightEvent> events) {
        return LogEntry.append(opened, night, events, workbench.now(), models, Optional.empty(), Known.NOTHING);
    }

    private NightState state(NightLog opened) {
        return NightState.of(opened.events(night), workbench.now(), models);
    }
}
