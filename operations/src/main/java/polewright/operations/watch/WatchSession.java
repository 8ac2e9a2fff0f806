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
 * Frames as they come, and the log beside them: what the frames see reaches the log as it happens, what others log is heeded
 * at the next frame, and what the night learns from both is in the next order.
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
     * One more frame.
     *
     * @param told is given what it told, before what follows from that is logged; of screws after, since what the log has
     *     learned from them is in it
     * @throws InputRefused when nothing can be made of it; the session is as before
     */
    void add(CameraAttitude frame, Consumer<WatchStep> told) {
        heedTheLog();
        WatchStep step = watch.add(frame);
        if (step instanceof WatchStep.ScrewsFollowed followed) {
            // First the log, so that what is said to be left counts with what the night has learned.
            boolean isLearned = logWhatTheScrewsDid();
            told.accept(isLearned ? watch.followed().orElse(followed) : followed);
            return;
        }
        told.accept(step);
        if (step instanceof WatchStep.AxisFound || step instanceof WatchStep.AxisSharpened) {
            isClampingToSee = false;
            log(() -> entries.logAxis(watch.sighting().orElseThrow()));
        } else if (step instanceof WatchStep.StartedAfresh afresh) {
            afresh.leftOff().ifPresent(left -> log(() -> entries.logAfterScrews(left)));
            entries.startAfresh();
        }
    }

    /** Logs where the screws have taken the axis, if the log does not have it. */
    void end() {
        watch.leftOff().ifPresent(left -> log(() -> entries.logAfterScrews(left)));
    }

    /** What was logged beside this watch: it goes on from there. */
    private void heedTheLog() {
        WatchLog.News news;
        try {
            news = entries.byOthers();
        } catch (InputRefused | OperationFailed notNow) {
            // Whatever is wrong with the log is said when something is to be logged.
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

    /** Something before was corrected or taken back: orders count with the night as it is read now. */
    private void reread(NightState night) {
        if (!night.begun().site().equals(watch.site())) {
            listener.on(new WatchEvent.Noted(
                    "The site was corrected, and frames depend on it. Stop this watch and start it again."));
        }
        watch.relearned(FollowedScrews.Known.of(night.fix()));
    }

    /** Whether something was logged, so that more is known of the screws than the frame alone told. */
    private boolean logWhatTheScrewsDid() {
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
            Optional<NightState> night = entries.putInPlaceOfOwnTurn(turned);
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

    /** Whether this watch logged an event that is in the log. Safe for use by several threads. */
    boolean hasLogged(long seq) {
        return entries.hasLogged(seq);
    }

    /** What cannot be logged is said once, and the watch goes on: what comes next may be. */
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
