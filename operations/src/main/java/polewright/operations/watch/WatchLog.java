package polewright.operations.watch;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.TurnedFrames;
import polewright.operations.LogEntry;
import polewright.operations.OperationFailed;
import polewright.operations.Workbench;
import polewright.session.NightId;
import polewright.session.NightState;
import polewright.session.StandingEvents;
import polewright.session.event.Correction;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.store.KnownState;
import polewright.store.NightLog;

/** The log entries of a watch: the frames that give the axis, and where the screws moved it. */
public final class WatchLog {
    private final Workbench workbench;
    private final Supplier<NightLog> log;
    private final NightId night;
    private final Optional<NightEvent.Begun> begun;
    private final NightState.ModelCache models = new NightState.ModelCache();
    private final Set<Long> ownEvents = new HashSet<>();
    private Optional<Long> own;
    private Optional<Long> ownTurn = Optional.empty();
    private long lastSeen;

    private WatchLog(
            Workbench workbench,
            Supplier<NightLog> log,
            NightId night,
            Optional<NightEvent.Begun> begun,
            Optional<Long> own,
            long lastSeen) {
        this.workbench = workbench;
        this.log = log;
        this.night = night;
        this.begun = begun;
        this.own = own;
        this.lastSeen = lastSeen;
    }

    /**
     * The entries of a watch in the most recent night.
     *
     * @param log opens the log, each time that something is added
     * @param own number of the sighting that the watch continues from, if any; a better one replaces it
     */
    static WatchLog ofTonight(Workbench workbench, Supplier<NightLog> log, Optional<Long> own) {
        try (NightLog opened = log.get()) {
            NightId night = LogEntry.latestNight(opened);
            List<LoggedEvent> events = opened.events(night);
            // Actions at the mount after the frames from which the watch continues are still to be processed.
            return new WatchLog(
                    workbench, log, night, StandingEvents.beginning(events), own, own.orElse(lastOf(events)));
        }
    }

    /**
     * What was logged, and the night with it.
     *
     * @param moved the move of the axis, if that had to be logged first
     */
    public record Entry(LoggedEvent event, Optional<LoggedEvent> moved, NightState night) {}

    /** Logs the frames that give the axis, in place of the smaller set logged before. */
    Entry logAxis(TurnedFrames frames) {
        try (NightLog opened = log.get()) {
            requireTonight(opened);
            Optional<Long> fewer = own.filter(seq -> isStanding(opened.events(night), seq));
            List<NightEvent> events = new ArrayList<>(List.of(new NightEvent.SightingTaken(frames)));
            fewer.ifPresent(seq -> events.add(new NightEvent.Withdrawn(seq)));
            LoggedEvent taken = append(opened, events).get(0);
            own = Optional.of(taken.seq());
            return new Entry(taken, Optional.empty(), state(opened));
        }
    }

    /** Keeps what was logged; the next axis no longer replaces it. */
    void startAfresh() {
        own = Optional.empty();
        ownTurn = Optional.empty();
    }

    /**
     * What others have logged since the last call.
     *
     * @param moves of the mount, in order, as they stand
     * @param reread the night recomputed, if something logged earlier is interpreted differently now
     */
    record News(List<LoggedEvent> moves, Optional<NightState> reread) {
        private static final News NONE = new News(List.of(), Optional.empty());
    }

    News byOthers() {
        try (NightLog opened = log.get()) {
            List<LoggedEvent> events = opened.events(night);
            long before = lastSeen;
            lastSeen = lastOf(events);
            if (lastSeen == before) {
                return News.NONE;
            }
            List<LoggedEvent> moves = StandingEvents.among(events).asMeant().stream()
                    .filter(e -> e.seq() > before && !hasLogged(e.seq()))
                    .filter(e -> isMoveNow(e.event()))
                    .toList();
            boolean isReread = events.stream()
                    .filter(e -> e.seq() > before && !hasLogged(e.seq()))
                    .anyMatch(e -> e.event() instanceof NightEvent.Revision);
            return new News(moves, isReread ? Optional.of(state(opened)) : Optional.empty());
        }
    }

    /**
     * Replaces a turn measured by frames with the same turn as counted by hand and logged.
     *
     * @return the night then; empty if no frames measured a turn just before it
     */
    Optional<NightState> replaceOwnTurn(LoggedEvent counted) {
        if (ownTurn.isEmpty() || !(counted.event() instanceof NightEvent.ScrewsTurned turned)) {
            return Optional.empty();
        }
        long seen = ownTurn.get();
        ownTurn = Optional.empty();
        try (NightLog opened = log.get()) {
            StandingEvents standing = StandingEvents.among(opened.events(night));
            if (!standing.has(seen) || !standing.has(counted.seq())) {
                return Optional.empty();
            }
            append(
                    opened,
                    List.of(new Correction.TurnCorrected(seen, turned), new NightEvent.Withdrawn(counted.seq())));
            return Optional.of(state(opened));
        }
    }

    /**
     * Logs where the screws have moved the axis, and the turns measured by frames, unless they were counted by hand
     * and logged meanwhile. If no turns explain the move, its cause counts as unknown. If the night has ended, it is
     * logged in that night.
     */
    Entry logAfterScrews(WatchStep.LeftOff left) {
        try (NightLog opened = log.get()) {
            NightEvent taken = new NightEvent.SightingTaken(atCurrentSite(opened, left.sighting()));
            List<LoggedEvent> logged;
            if (hasLoggedMoves(opened.events(night))) {
                logged = append(opened, List.of(taken));
            } else {
                NightEvent move = left.made()
                        .<NightEvent>map(made -> new NightEvent.ScrewsTurned(made.azimuth(), made.altitude()))
                        .orElseGet(NightEvent.Knocked::new);
                logged = append(opened, List.of(move, taken));
            }
            LoggedEvent last = logged.get(logged.size() - 1);
            own = Optional.of(last.seq());
            ownTurn = logged.stream()
                    .filter(event -> event.event() instanceof NightEvent.ScrewsTurned)
                    .map(LoggedEvent::seq)
                    .findFirst();
            return new Entry(last, logged.size() > 1 ? Optional.of(logged.get(0)) : Optional.empty(), state(opened));
        }
    }

    /** Frames of another night do not belong to this one, even in the same folder. */
    private void requireTonight(NightLog opened) {
        if (!LogEntry.latestNight(opened).equals(night)) {
            throw new OperationFailed("another night has begun since this watch started. Start it again.");
        }
        requireSameSite(opened);
    }

    /** The displayed axis is computed for the site at the beginning. */
    private void requireSameSite(NightLog opened) {
        if (!beginning(opened).map(NightEvent.Begun::site).equals(begun.map(NightEvent.Begun::site))) {
            throw new OperationFailed(
                    "the site was corrected since this watch started. Start it again, so that its frames"
                            + " are evaluated for the right site.");
        }
    }

    /** The attitude at the corrected site, if the site was corrected meanwhile. */
    private Sighting atCurrentSite(NightLog opened, Sighting frames) {
        return begun.flatMap(entered ->
                        beginning(opened).map(corrected -> frames.atCorrectedSite(entered.siteCorrectedTo(corrected))))
                .orElse(frames);
    }

    private Optional<NightEvent.Begun> beginning(NightLog opened) {
        return StandingEvents.beginning(opened.events(night));
    }

    private boolean hasLoggedMoves(List<LoggedEvent> events) {
        return StandingEvents.among(events).asMeant().stream()
                .filter(e -> e.seq() > own.orElse(Long.MAX_VALUE))
                .anyMatch(e -> isMoveNow(e.event()));
    }

    /** A turn logged late moved the axis earlier on; the whole night is recomputed for it. */
    private static boolean isMoveNow(NightEvent event) {
        return event instanceof NightEvent.MountMove && !(event instanceof NightEvent.Revision);
    }

    private static long lastOf(List<LoggedEvent> events) {
        return events.get(events.size() - 1).seq();
    }

    private static boolean isStanding(List<LoggedEvent> events, long seq) {
        return StandingEvents.among(events).has(seq);
    }

    private List<LoggedEvent> append(NightLog opened, List<NightEvent> events) {
        // No other thread may find an event in the log before it is listed here as ours.
        synchronized (ownEvents) {
            List<LoggedEvent> logged = LogEntry.append(
                    opened, night, events, workbench.now(), models, Optional.empty(), KnownState.NOTHING);
            logged.forEach(event -> ownEvents.add(event.seq()));
            return logged;
        }
    }

    /** Whether this watch logged an event that is in the log. Thread-safe. */
    boolean hasLogged(long seq) {
        synchronized (ownEvents) {
            return ownEvents.contains(seq);
        }
    }

    private NightState state(NightLog opened) {
        return NightState.of(opened.events(night), workbench.now(), models).byCamera();
    }
}
