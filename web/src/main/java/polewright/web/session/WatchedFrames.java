package polewright.web.session;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executor;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.LongConsumer;
import org.jspecify.annotations.Nullable;
import polewright.alignment.allowance.Allowance;
import polewright.alignment.camera.ScrewProgress;
import polewright.alignment.sighting.TurnedFrames;
import polewright.operations.OperationFailed;
import polewright.operations.Workbench;
import polewright.operations.watch.BackgroundWatch;
import polewright.operations.watch.FrameFolder;
import polewright.operations.watch.FrameWatch;
import polewright.operations.watch.LiveView;
import polewright.operations.watch.WatchEvent;
import polewright.session.NightId;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.store.NightLog;

/**
 * The frames of a desk's night: its folder is watched whenever there is a night, and the watch begins afresh when something
 * is done at the wedge that it has not seen. Safe for use by several threads.
 */
public final class WatchedFrames implements AutoCloseable {
    // What is not looked up by then is shown as it is; most frames are, and are pushed to the page once.
    private static final Executor A_SECOND_LATER = CompletableFuture.delayedExecutor(1, TimeUnit.SECONDS);
    private static final long BETWEEN_LOOKS_MILLIS = 250;
    // A server's first look opens the log and begins a watch, which takes seconds on a slow laptop; a watch that ends
    // first finishes its frame, on the timer's thread. A frame that was sent can wait as long as its sender does.
    private static final long PATIENCE_MILLIS = 15_000;

    private final NightSession desk;
    private final FrameSource source;
    // How long a file has been still goes by the real time, whatever the desk's clock says.
    private final Clock looking;
    private final FrameNews news = new FrameNews();
    private final ReentrantLock tending = new ReentrantLock();
    private @Nullable Watching watching;
    // Told to end, and still at a frame: another that began beside it would log what it logs.
    private boolean isEnding;
    private @Nullable Watching ended;
    private volatile @Nullable ScheduledExecutorService looks;
    private long tendedAt = -1;
    private Optional<Said> said = Optional.empty();

    /**
     * A watch that runs.
     *
     * @param task what runs
     * @param since the number of the event that was the last when it began
     */
    private record Watching(
            BackgroundWatch watch,
            FrameWatch task,
            NightId night,
            long since,
            NightEvent.Begun begun,
            Allowance allowance) {
        Path folder() {
            return task.frames().folder();
        }
    }

    private WatchedFrames(NightSession desk, FrameSource source, Clock looking) {
        this.desk = desk;
        this.source = source;
        this.looking = looking;
    }

    /**
     * Frames that are watched once {@link #open} is called.
     *
     * @param desk whose night they belong to
     * @param looking a clock that runs
     */
    public static WatchedFrames of(NightSession desk, FrameSource source, Clock looking) {
        return new WatchedFrames(desk, source, looking);
    }

    /** Begins to watch, as soon as there is a night and a folder; nothing more if it does already. */
    public void open() {
        tending.lock();
        try {
            if (looks != null) {
                return;
            }
            ScheduledExecutorService timer = Executors.newSingleThreadScheduledExecutor(task -> {
                Thread thread = new Thread(task, "keeper of the frame watch");
                thread.setDaemon(true);
                return thread;
            });
            looks = timer;
            Future<?> unused =
                    timer.scheduleWithFixedDelay(() -> look(), 0, BETWEEN_LOOKS_MILLIS, TimeUnit.MILLISECONDS);
        } finally {
            tending.unlock();
        }
    }

    /** Where frames are saved, if anywhere. */
    public Optional<Path> folder() {
        return source.folder().get();
    }

    /** Whether frames come only from pages: no capture program saves here. */
    public boolean isOwnFolder() {
        return source.ownFolder();
    }

    /** Whether frames are on their way: a capture program saves to the folder, or some were sent. */
    public boolean isCameraAtWork() {
        return (!isOwnFolder() && folder().filter(Files::isDirectory).isPresent())
                || stand().newest().isPresent();
    }

    public FrameStatus stand() {
        return news.stand();
    }

    /** From now on tells of whatever is new, which must not wait for anything; {@link #forget} ends it. */
    public void tell(LongConsumer listener) {
        news.tell(listener);
    }

    public void forget(LongConsumer listener) {
        news.forget(listener);
    }

    /**
     * Sees to it that the watch is the right one for how the night stands now. Where one is just ending, which takes as
     * long as its last frame, nobody waits for that.
     *
     * @return whether it is the right one by now
     */
    public boolean tend() {
        ScheduledExecutorService timer = looks;
        if (timer == null) {
            return false;
        }
        try {
            return timer.submit(this::look).get(PATIENCE_MILLIS, TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        } catch (TimeoutException | ExecutionException | RejectedExecutionException notYet) {
            return false;
        }
    }

    private boolean look() {
        try {
            return seeTo();
        } catch (RuntimeException broken) {
            // A timer would come no more after this.
            news.note("The frames cannot be watched at the moment ("
                    + broken.getClass().getSimpleName() + "). Trying again automatically.");
            return false;
        }
    }

    private boolean seeTo() {
        tending.lock();
        try {
            if (looks == null) {
                return false;
            }
            Optional<Path> folder = source.folder().get().filter(Files::isDirectory);
            long now = desk.stand();
            Watching running = watching;
            boolean isSame = running != null
                    && !isEnding
                    && running.watch().isRunning()
                    && folder.equals(Optional.of(running.folder()))
                    && now == tendedAt;
            if (!isSame && !see(folder)) {
                return false;
            }
            tendedAt = now;
            return true;
        } catch (InputRefused | OperationFailed notNow) {
            // Busy, damaged or not begun: the pages say so, and the next look may find it well.
            return false;
        } finally {
            tending.unlock();
        }
    }

    /** Whether it could be seen to. */
    private boolean see(Optional<Path> folder) {
        if (folder.isEmpty()) {
            if (!source.ownFolder()) {
                source.folder()
                        .get()
                        .ifPresent(path -> news.note(path + " does not exist. Trying again automatically."));
            }
            return end(false);
        }
        Optional<NightSession.Tonight> tonight = desk.tonight();
        if (tonight.isEmpty()) {
            return end(false);
        }
        Watching running = watching;
        if (running != null && !isEnding && isRight(running, folder.get(), tonight.get())) {
            return true;
        }
        // What it saw of the screws goes into the log before the next one reads that.
        if (!end(true)) {
            return false;
        }
        begin(folder.get(), desk.tonight().orElseThrow());
        return true;
    }

    private static boolean isRight(Watching running, Path folder, NightSession.Tonight tonight) {
        return running.watch().isRunning()
                && running.folder().equals(folder)
                && running.night().equals(tonight.id())
                && running.begun().equals(tonight.state().begun())
                && running.allowance().equals(tonight.state().allowance())
                && tonight.events().stream()
                        .filter(event -> event.seq() > running.since())
                        .filter(event -> !running.task().hasLogged(event.seq()))
                        .map(LoggedEvent::event)
                        .noneMatch(WatchedFrames::startsAfresh);
    }

    /** What was moved is followed no longer; by another rig or site, what was seen so far comes to something else. */
    private static boolean startsAfresh(NightEvent event) {
        return event instanceof NightEvent.MountMove
                || event instanceof NightEvent.RigCorrected
                || event instanceof NightEvent.SiteCorrected;
    }

    private void begin(Path folder, NightSession.Tonight tonight) {
        Workbench bench = desk.workbench();
        Workbench logging = new Workbench(
                new SessionClock(desk), bench.environment(), bench.out(), bench.err(), bench.terminal(), bench.pause());
        LiveView view = new LiveView(tonight.state().begun().site(), news::arrived, A_SECOND_LATER);
        FrameFolder frames = goneOnWith(folder, tonight.id()).orElseGet(() -> FrameFolder.of(folder, looking, false));
        FrameWatch.Task task = new FrameWatch.Task(
                isToFollow(tonight), source.clues().at(tonight.state().begun().site()), source.drive());
        FrameWatch watch = FrameWatch.of(
                frames,
                task,
                tonight.state(),
                () -> NightLog.open(logging.defaultLog()),
                logging,
                event -> heard(event, view));
        watching = new Watching(
                BackgroundWatch.start(watch, event -> heard(event, view), logging),
                watch,
                tonight.id(),
                tonight.lastSeq(),
                tonight.state().begun(),
                tonight.state().allowance());
        news.outdated();
    }

    /** What the last watch of tonight left: frames may have come while it ended and this one begins. */
    private Optional<FrameFolder> goneOnWith(Path folder, NightId night) {
        return Optional.ofNullable(ended)
                .filter(last -> last.night().equals(night) && last.folder().equals(folder))
                .map(last -> last.task().frames());
    }

    /** Frames told the axis lately, and it was moved since by screws and clamps alone: one frame tells where to. */
    private static boolean isToFollow(NightSession.Tonight tonight) {
        List<NightEvent> told = tonight.state().standing().stream()
                .map(LoggedEvent::event)
                .filter(event -> event instanceof NightEvent.Knocked || isFrames(event))
                .toList();
        return !told.isEmpty()
                && told.get(told.size() - 1) instanceof NightEvent.SightingTaken last
                && Duration.between(last.seenAt(), tonight.state().now()).compareTo(ScrewProgress.LONGEST) < 0;
    }

    private static boolean isFrames(NightEvent event) {
        return event instanceof NightEvent.SightingTaken taken && taken.sighting() instanceof TurnedFrames;
    }

    /**
     * Whether it has ended; if not, it is still at a frame.
     *
     * @param isGoneOnWith whether another watch follows, which is to miss no frame
     */
    private boolean end(boolean isGoneOnWith) {
        Watching running = watching;
        if (running != null) {
            running.watch().close();
            isEnding = running.watch().isRunning();
            if (!isEnding) {
                ended = running;
                watching = null;
            }
        }
        ended = isGoneOnWith ? ended : null;
        return !isEnding;
    }

    /** What somebody said last; another device that says the same has said nothing more. */
    private record Said(NightId night, long from, TurnConfirmation settled) {}

    /**
     * The screws are where they are to be: what the frames saw of them goes into the log.
     *
     * @param night the night that whoever says so knew of
     * @param lastSeq the number of its last event then
     */
    public TurnConfirmation settle(NightId night, long lastSeq) {
        tending.lock();
        try {
            Optional<TurnConfirmation> before = said.filter(
                            last -> last.night().equals(night) && last.from() == lastSeq)
                    .map(Said::settled);
            if (before.isPresent()) {
                return before.get();
            }
            Watching running = watching;
            boolean isAsKnown = running != null
                    && desk.tonight()
                            .filter(now -> now.id().equals(night) && isTheWatchsOwn(running, now.events(), lastSeq))
                            .isPresent();
            if (running == null || !isAsKnown) {
                return TurnConfirmation.OTHERWISE;
            }
            if (!end(true)) {
                return TurnConfirmation.SOON;
            }
            seeTo();
            OptionalLong after = desk.tonight().stream()
                    .mapToLong(NightSession.Tonight::lastSeq)
                    .filter(now -> now > lastSeq || running.task().hasLogged(now))
                    .findFirst();
            if (after.isEmpty()) {
                return TurnConfirmation.UNMOVED;
            }
            TurnConfirmation settled = TurnConfirmation.as(after.getAsLong());
            said = Optional.of(new Said(night, lastSeq, settled));
            return settled;
        } finally {
            tending.unlock();
        }
    }

    /** Whether nothing came into the log since but what the frames told, which may be after the page was shown. */
    private static boolean isTheWatchsOwn(Watching running, List<LoggedEvent> events, long since) {
        return events.get(events.size() - 1).seq() >= since
                && events.stream()
                        .filter(event -> event.seq() > since)
                        .allMatch(event -> running.task().hasLogged(event.seq()));
    }

    private void heard(WatchEvent event, LiveView view) {
        if (event instanceof WatchEvent.Noted noted) {
            news.note(noted.line());
        } else if (event instanceof WatchEvent.NotLogged notLogged) {
            news.note(notLogged.line());
        }
        view.on(event);
    }

    /** Ends the watch, which logs where the screws have taken the axis; it can be opened again. */
    @Override
    public void close() {
        tending.lock();
        try {
            ScheduledExecutorService timer = looks;
            looks = null;
            if (timer != null) {
                timer.shutdown();
            }
            end(false);
            tendedAt = -1;
        } finally {
            tending.unlock();
        }
    }
}
