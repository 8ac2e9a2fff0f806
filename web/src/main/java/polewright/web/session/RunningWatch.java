package polewright.web.session;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import polewright.alignment.allowance.Allowance;
import polewright.alignment.camera.ScrewProgress;
import polewright.alignment.sighting.SightingFormat;
import polewright.operations.Workbench;
import polewright.operations.watch.BackgroundWatch;
import polewright.operations.watch.FrameFolder;
import polewright.operations.watch.FrameWatch;
import polewright.operations.watch.WatchListener;
import polewright.session.NightId;
import polewright.session.event.Correction;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.store.NightLog;

/**
 * A running watch of a folder, with the night for which it was started.
 *
 * @param watch the thread
 * @param task what it runs
 * @param since the number of the last event when it began
 * @param begun site and rig by which it measures frames
 * @param allowance the zone to which it orders turns
 */
record RunningWatch(
        BackgroundWatch watch,
        FrameWatch task,
        NightId night,
        long since,
        NightEvent.Begun begun,
        Allowance allowance) {
    /** Starts a watch for the current state of a session's night. */
    static RunningWatch start(
            FrameFolder frames,
            FrameSource source,
            NightSession session,
            NightSession.Tonight tonight,
            WatchListener listener) {
        Workbench logging = session.workbench().at(new SessionClock(session));
        FrameWatch.Task task = new FrameWatch.Task(
                mayFollow(tonight), source.clues().at(tonight.state().begun().site()), source.drive());
        FrameWatch watch = FrameWatch.of(
                frames, task, tonight.state(), () -> NightLog.open(logging.defaultLog()), logging, listener);
        return new RunningWatch(
                BackgroundWatch.start(watch, listener, logging),
                watch,
                tonight.id(),
                tonight.lastSeq(),
                tonight.state().begun(),
                tonight.state().allowance());
    }

    Path folder() {
        return task.frames().folder();
    }

    boolean isRunning() {
        return watch.isRunning();
    }

    /** Whether this watch is right for the night as it is now. */
    boolean suits(Path folder, NightSession.Tonight tonight) {
        return isRunning()
                && folder().equals(folder)
                && night.equals(tonight.id())
                && begun.equals(tonight.state().begun())
                && allowance.equals(tonight.state().allowance())
                && tonight.events().stream()
                        .filter(event -> event.seq() > since)
                        .filter(event -> !task.hasLogged(event.seq()))
                        .map(LoggedEvent::event)
                        .noneMatch(RunningWatch::needsNewWatch);
    }

    /** Whether all events after one come from this watch; they may have been logged after a page was shown. */
    boolean hasLoggedAllSince(long seq, List<LoggedEvent> events) {
        return events.get(events.size() - 1).seq() >= seq
                && events.stream().filter(event -> event.seq() > seq).allMatch(event -> task.hasLogged(event.seq()));
    }

    /**
     * Whether an event needs a new watch: after a move the old one no longer follows the axis, and with another rig
     * or site its frames mean something else.
     */
    private static boolean needsNewWatch(NightEvent event) {
        return event instanceof NightEvent.MountMove || event instanceof Correction.SetupCorrection;
    }

    /**
     * Whether recent frames measured the axis, which only screws and clamps have moved since: then one frame shows
     * where it is now.
     */
    private static boolean mayFollow(NightSession.Tonight tonight) {
        List<NightEvent> measured = tonight.state().standing().stream()
                .map(LoggedEvent::event)
                .filter(event -> event instanceof NightEvent.Knocked || isFrames(event))
                .toList();
        return !measured.isEmpty()
                && measured.get(measured.size() - 1) instanceof NightEvent.SightingTaken last
                && Duration.between(last.seenAt(), tonight.state().now()).compareTo(ScrewProgress.LONGEST) < 0;
    }

    private static boolean isFrames(NightEvent event) {
        return event.asSighting()
                .filter(sighting -> sighting.format() == SightingFormat.FRAMES)
                .isPresent();
    }
}
