package polewright.operations.watch;

import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import polewright.alignment.advice.FollowedScrews;
import polewright.operations.OperationFailed;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.attitude.CameraAttitude;

/**
 * Combines incoming frames with the log: what the frames show is logged as it happens, what others log is taken into
 * account at the next frame, and what the night learns from both is used in the next order.
 */
final class WatchSession {
    private final TurningWatch watch;
    private final WatchLog entries;
    private final WatchListener listener;
    private boolean isClampingToSee;
    private Optional<LoggedEvent> counted = Optional.empty();
    private String lastNotLogged = "";

    WatchSession(TurningWatch watch, WatchLog entries, WatchListener listener) {
        this.watch = watch;
        this.entries = entries;
        this.listener = listener;
    }

    /**
     * Adds one more frame.
     *
     * @param listener receives its result before anything that follows from it is logged; a result for the screws
     *     comes afterwards, because it includes what the night has learned from them
     * @throws InputRefused when it cannot be used; the session is unchanged
     */
    void add(CameraAttitude frame, Consumer<WatchStep> listener) {
        applyNews();
        WatchStep step = watch.add(frame);
        if (step instanceof WatchStep.ScrewsFollowed followed) {
            // Logged first, so that the remaining turns include what the night has learned.
            boolean isLearned = logScrewTurns();
            listener.accept(isLearned ? watch.followed().orElse(followed) : followed);
            return;
        }
        listener.accept(step);
        if (step instanceof WatchStep.AxisFound || step instanceof WatchStep.AxisSharpened) {
            isClampingToSee = false;
            log(() -> entries.logAxis(watch.sighting().orElseThrow()));
        } else if (step instanceof WatchStep.StartedAfresh afresh) {
            afresh.leftOff().ifPresent(left -> log(() -> entries.logAfterScrews(left)));
            entries.startAfresh();
        }
    }

    /** Logs where the screws have moved the axis, if that is not in the log. */
    void end() {
        watch.leftOff().ifPresent(left -> log(() -> entries.logAfterScrews(left)));
    }

    /** Takes into account what others have logged, and continues from there. */
    private void applyNews() {
        WatchLog.News news;
        try {
            news = entries.byOthers();
        } catch (InputRefused | OperationFailed notNow) {
            // Problems with the log are reported when something is to be logged.
            return;
        }
        news.reread().ifPresent(this::reread);
        for (LoggedEvent move : news.moves()) {
            if (move.event() instanceof NightEvent.Knocked) {
                counted = Optional.empty();
                watch.startAfresh();
                entries.startAfresh();
                listener.on(
                        new WatchEvent.Noted("A knock was logged. The axis is measured again from the next frames."));
            } else if (move.event() instanceof NightEvent.ScrewsTurned turned) {
                counted = Optional.of(move);
                watch.counted(turned.azimuth(), turned.altitude());
            } else {
                isClampingToSee = true;
            }
        }
    }

    /** Something earlier was corrected or taken back: orders follow the recomputed night. */
    private void reread(NightState night) {
        if (!night.begun().site().equals(watch.site())) {
            listener.on(new WatchEvent.Noted(
                    "The site was corrected, and frames depend on it. Stop this watch and start it again."));
        }
        watch.relearned(FollowedScrews.Known.of(night.fix()));
    }

    /** Whether something was logged, so that more is known about the screws than from the frame alone. */
    private boolean logScrewTurns() {
        Optional<LoggedEvent> turned = counted;
        counted = Optional.empty();
        if (turned.isPresent() && !watch.screwsMoved()) {
            return isPutInPlace(turned.get());
        }
        if (!watch.isToLog() && !isClampingToSee) {
            counted = turned;
            return false;
        }
        Optional<WatchStep.LeftOff> seen = watch.seen();
        if (seen.isEmpty()) {
            return false;
        }
        Optional<NightState> night = log(() -> entries.logAfterScrews(seen.get()));
        night.ifPresent(known -> watch.logged(FollowedScrews.Known.of(known.fix())));
        isClampingToSee = isClampingToSee && night.isEmpty();
        return night.isPresent();
    }

    private boolean isPutInPlace(LoggedEvent turned) {
        try {
            Optional<NightState> night = entries.replaceOwnTurn(turned);
            night.ifPresent(known -> {
                watch.logged(FollowedScrews.Known.of(known.fix()));
                listener.on(new WatchEvent.Noted("#" + turned.seq()
                        + " is the turn that the frames already measured; it replaces that, and counts once."));
            });
            return night.isPresent();
        } catch (InputRefused | OperationFailed notNow) {
            return false;
        }
    }

    /** Whether this watch logged an event that is in the log. Thread-safe. */
    boolean hasLogged(long seq) {
        return entries.hasLogged(seq);
    }

    /** A failure to log is reported once, and the watch continues: the next entry may succeed. */
    private Optional<NightState> log(Supplier<WatchLog.Entry> entry) {
        try {
            WatchLog.Entry logged = entry.get();
            lastNotLogged = "";
            listener.on(new WatchEvent.Logged(logged));
            return Optional.of(logged.night());
        } catch (InputRefused | OperationFailed refused) {
            String line = "Not logged: " + refused.getMessage();
            if (!line.equals(lastNotLogged)) {
                lastNotLogged = line;
                listener.on(new WatchEvent.NotLogged(line));
            }
            return Optional.empty();
        }
    }
}
