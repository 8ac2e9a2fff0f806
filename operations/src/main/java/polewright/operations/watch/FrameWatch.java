package polewright.operations.watch;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import polewright.alignment.advice.FollowedScrews;
import polewright.alignment.camera.Drive;
import polewright.alignment.sighting.TurnedFrames;
import polewright.image.MissingFacts;
import polewright.operations.OperationFailed;
import polewright.operations.Workbench;
import polewright.operations.camera.DecodedFrame;
import polewright.operations.camera.EarlierFrames;
import polewright.operations.camera.ExposureTime;
import polewright.operations.camera.FrameClues;
import polewright.operations.camera.FrameFile;
import polewright.operations.camera.FrameReading;
import polewright.operations.camera.FrameSeries;
import polewright.operations.camera.HeaderClock;
import polewright.operations.camera.PlacedFrame;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.attitude.CameraAttitude;
import polewright.store.NightLog;

/**
 * Processes each new frame of a folder, reports the result, and logs the axis: the same for the terminal and the
 * pages. Runs once, in the thread that calls {@link #run}.
 */
public final class FrameWatch {
    private static final MissingFacts.TimeRemedy WITHOUT_TIME = new MissingFacts.TimeRemedy(
            "let the camera or the capture program write the time into each frame",
            "start the watch with the time zone of the camera's clock, such as +01:00, or Z for UTC");

    private final Workbench workbench;
    private final Clock clock;
    private final NightEvent.Begun begun;
    private final FrameClues clues;
    private final WatchSession session;
    private final FrameFolder frames;
    private final WatchListener listener;
    private final FrameReading reading;
    private final List<HeaderClock.Saved> saved = new ArrayList<>();
    private boolean isClockNoted;
    private EarlierFrames earlier = EarlierFrames.NONE;
    private Instant lastArrival;
    private long taken;

    /**
     * What is known before the first frame.
     *
     * @param turning whether the last frames in the log give the axis and the camera has not been touched since
     * @param clues what is known about the frames
     * @param drive what the drive does, if given
     */
    public record Task(boolean turning, FrameClues clues, Drive drive) {}

    /**
     * When a watch ends by itself.
     *
     * @param frames after this many
     * @param idle when none has come for this long
     */
    public record Until(OptionalLong frames, Optional<Duration> idle) {
        /** Does not end by itself. */
        public static final Until STOPPED = new Until(OptionalLong.empty(), Optional.empty());
    }

    private FrameWatch(
            Workbench workbench,
            NightEvent.Begun begun,
            FrameClues clues,
            WatchSession session,
            FrameFolder frames,
            WatchListener listener) {
        this.workbench = workbench;
        this.clock = frames.clock();
        this.begun = begun;
        this.clues = clues;
        this.session = session;
        this.frames = frames;
        this.listener = listener;
        this.reading = new FrameReading(clock);
        this.lastArrival = clock.instant();
    }

    /**
     * A watch of the frames that a folder provides from now on.
     *
     * <p>Events are logged with the time of the workbench, which may be simulated; whether a file is unchanged is
     * judged by the folder's own clock.
     *
     * @param frames a new folder, or that of a watch that has ended: then no frame in between is missed
     * @param night the current state
     * @param log opens the log that is added to
     * @throws OperationFailed when there is nothing to continue from
     */
    public static FrameWatch of(
            FrameFolder frames,
            Task task,
            NightState night,
            Supplier<NightLog> log,
            Workbench workbench,
            WatchListener listener) {
        NightEvent.Begun begun = night.begun();
        TurningWatch watch =
                new TurningWatch(begun.site(), FollowedScrews.Known.of(night.fix()), night.allowance(), task.drive());
        Optional<LastFrames> last = task.turning() ? Optional.of(lastFrames(night)) : Optional.empty();
        last.ifPresent(logged -> watch.continueFrom(logged.frames()));
        return new FrameWatch(
                workbench,
                begun,
                task.clues(),
                new WatchSession(watch, WatchLog.ofTonight(workbench, log, last.map(LastFrames::seq)), listener),
                frames,
                listener);
    }

    /** The frames that give the axis, and their number in the log. */
    private record LastFrames(long seq, TurnedFrames frames) {}

    private static LastFrames lastFrames(NightState night) {
        List<LastFrames> logged = new ArrayList<>();
        for (LoggedEvent event : night.standing()) {
            if (event.event() instanceof NightEvent.SightingTaken taken
                    && taken.sighting() instanceof TurnedFrames frames) {
                logged.add(new LastFrames(event.seq(), frames));
            }
        }
        if (logged.isEmpty()) {
            throw new OperationFailed(
                    "no frames have given the axis tonight. Watch without --turning first, or use polewright sight"
                            + " frames.");
        }
        return logged.get(logged.size() - 1);
    }

    /** The number of files present at the start, which are ignored. */
    public int passedOver() {
        return frames.passedOver();
    }

    /** The source of the frames. */
    public FrameFolder frames() {
        return frames;
    }

    /** Whether this watch logged an event that is in the log. Thread-safe. */
    public boolean hasLogged(long seq) {
        return session.hasLogged(seq);
    }

    /** Watches until it ends, and logs where the screws have moved the axis. */
    public void run(Until until, BooleanSupplier stopped) {
        try (FolderNews news = FolderNews.of(frames.folder())) {
            while (!stopped.getAsBoolean() && !isOver(until)) {
                look(stopped);
                if (!stopped.getAsBoolean() && !isOver(until)) {
                    workbench.pause().atMost(frames.untilNextLook(), news);
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        session.end();
        listener.on(new WatchEvent.Ended());
    }

    private boolean isOver(Until until) {
        boolean idle = until.idle()
                .filter(longest ->
                        Duration.between(lastArrival, clock.instant()).compareTo(longest) >= 0)
                .isPresent();
        return idle || (until.frames().isPresent() && taken >= until.frames().getAsLong());
    }

    private void look(BooleanSupplier stopped) {
        List<WatchEvent.Placed> placed = new ArrayList<>();
        Deque<Arrival> arrivals = new ArrayDeque<>(frames.look());
        while (!arrivals.isEmpty() && !stopped.getAsBoolean()) {
            Arrival arrival = arrivals.remove();
            if (arrival instanceof Arrival.PassedOver passed) {
                listener.on(new WatchEvent.Noted(passed.line()));
            } else if (arrival instanceof Arrival.Whole whole) {
                place(whole.file()).ifPresent(placed::add);
                lastArrival = clock.instant();
                taken++;
            }
        }
        // The next watch of this folder processes what was not placed here.
        frames.putBack(arrivals);
        placed.sort(Comparator.comparing(p -> p.attitude().at()));
        placed.forEach(this::add);
    }

    private Optional<WatchEvent.Placed> place(FrameFile file) {
        try {
            DecodedFrame decoded = reading.decode(file, clues);
            listener.on(new WatchEvent.Arrived(decoded));
            PlacedFrame frame =
                    reading.place(decoded, clues, ExposureTime.needed(Optional.empty(), WITHOUT_TIME), earlier);
            earlier = earlier.and(frame);
            noteHeaderClock(frame);
            CameraAttitude attitude = FrameSeries.attitude(frame, begun.site(), begun.weather());
            WatchEvent.Placed placed = new WatchEvent.Placed(frame, attitude);
            listener.on(placed);
            return Optional.of(placed);
        } catch (InputRefused | OperationFailed refused) {
            listener.on(new WatchEvent.Refused(file.name(), String.valueOf(refused.getMessage())));
            return Optional.empty();
        }
    }

    /** Reported once; frames are still used with their header times, as only the observer knows the camera's clock. */
    private void noteHeaderClock(PlacedFrame frame) {
        if (clues.decoding().cameraZone().isPresent() || isClockNoted) {
            return;
        }
        HeaderClock.Saved.of(frame).ifPresent(saved::add);
        HeaderClock.of(saved).ifPresent(off -> {
            isClockNoted = true;
            listener.on(new WatchEvent.Noted("NOTE  The times in these frames are " + off.words()
                    + ". They are probably local time and not UTC, which would shift the axis. Start the watch again"
                    + " with the zone"
                    + " of the camera's clock, " + off.zone() + "; if the times are UTC, with Z."));
        });
    }

    private void add(WatchEvent.Placed placed) {
        try {
            session.add(
                    placed.attitude(),
                    step -> listener.on(new WatchEvent.Told(placed.frame(), placed.attitude(), step)));
        } catch (InputRefused refused) {
            String name = placed.frame().name();
            listener.on(new WatchEvent.Refused(name, name + ": " + refused.getMessage()));
        }
    }
}
