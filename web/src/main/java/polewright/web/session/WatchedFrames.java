package polewright.web.session;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
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
import polewright.operations.OperationFailed;
import polewright.operations.watch.FrameFolder;
import polewright.operations.watch.LiveView;
import polewright.operations.watch.WatchEvent;
import polewright.session.NightId;
import polewright.sky.InputRefused;

/**
 * The frames of a session's night: its folder is watched while there is a night, and the watch restarts when
 * something is done at the wedge that it has not seen. Thread-safe.
 */
public final class WatchedFrames implements AutoCloseable {
    // A frame not yet processed after this time is shown without its result; most are ready, and so are sent to the
    // page once.
    private static final Executor A_SECOND_LATER = CompletableFuture.delayedExecutor(1, TimeUnit.SECONDS);
    private static final long BETWEEN_LOOKS_MILLIS = 250;
    // A server's first check opens the log and starts a watch, which takes seconds on a slow laptop; a watch that is
    // stopped first finishes its frame, on the timer's thread. An uploaded frame can wait as long as its sender does.
    private static final long PATIENCE_MILLIS = 15_000;

    private final NightSession session;
    private final FrameSource source;
    // Whether a file has stopped growing is judged by real time, not by the session's clock.
    private final Clock realTime;
    private final FrameNews news = new FrameNews();
    private final ReentrantLock refreshing = new ReentrantLock();
    private @Nullable RunningWatch watching;
    // Stopping, but still processing a frame: a second watch started now would log the same again.
    private boolean isEnding;
    private @Nullable RunningWatch ended;
    private volatile @Nullable ScheduledExecutorService scheduler;
    private long refreshedAt = -1;
    private Optional<LastConfirmation> lastConfirmation = Optional.empty();

    private WatchedFrames(NightSession session, FrameSource source, Clock realTime) {
        this.session = session;
        this.source = source;
        this.realTime = realTime;
    }

    /**
     * Frames that are watched once {@link #open} is called.
     *
     * @param session whose night they belong to
     * @param realTime a running clock
     */
    public static WatchedFrames of(NightSession session, FrameSource source, Clock realTime) {
        return new WatchedFrames(session, source, realTime);
    }

    /** Starts watching as soon as there is a night and a folder; does nothing if already watching. */
    public void open() {
        refreshing.lock();
        try {
            if (scheduler != null) {
                return;
            }
            ScheduledExecutorService timer = Executors.newSingleThreadScheduledExecutor(task -> {
                Thread thread = new Thread(task, "keeper of the frame watch");
                thread.setDaemon(true);
                return thread;
            });
            scheduler = timer;
            Future<?> unused =
                    timer.scheduleWithFixedDelay(() -> look(), 0, BETWEEN_LOOKS_MILLIS, TimeUnit.MILLISECONDS);
        } finally {
            refreshing.unlock();
        }
    }

    /** The folder in which frames are saved, if any. */
    public Optional<Path> folder() {
        return source.folder().get();
    }

    /** Whether frames come only from pages: no capture program saves here. */
    public boolean isOwnFolder() {
        return source.ownFolder();
    }

    /** Whether frames are expected: a capture program saves to the folder, or some were uploaded. */
    public boolean isCameraAtWork() {
        return (!isOwnFolder() && folder().filter(Files::isDirectory).isPresent())
                || status().newest().isPresent();
    }

    public FrameStatus status() {
        return news.status();
    }

    /** Notifies this listener of every change until {@link #removeListener}; it must not block. */
    public void addListener(LongConsumer listener) {
        news.addListener(listener);
    }

    public void removeListener(LongConsumer listener) {
        news.removeListener(listener);
    }

    /**
     * Makes sure that the running watch suits the current state of the night. It does not wait for a watch that is
     * ending, which takes as long as its last frame.
     *
     * @return whether the right watch is running now
     */
    public boolean refresh() {
        ScheduledExecutorService timer = scheduler;
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
            return update();
        } catch (RuntimeException broken) {
            // A timer that throws runs no more.
            news.note("The frames cannot be watched at the moment ("
                    + broken.getClass().getSimpleName() + "). Trying again automatically.");
            return false;
        }
    }

    private boolean update() {
        refreshing.lock();
        try {
            if (scheduler == null) {
                return false;
            }
            Optional<Path> folder = source.folder().get().filter(Files::isDirectory);
            long now = session.eventCount();
            RunningWatch running = watching;
            boolean isSame = running != null
                    && !isEnding
                    && running.isRunning()
                    && folder.equals(Optional.of(running.folder()))
                    && now == refreshedAt;
            if (!isSame && !updateFor(folder)) {
                return false;
            }
            refreshedAt = now;
            return true;
        } catch (InputRefused | OperationFailed notNow) {
            // Busy, damaged or not begun: the pages report it, and the next check may succeed.
            return false;
        } finally {
            refreshing.unlock();
        }
    }

    /** Whether the check could be made. */
    private boolean updateFor(Optional<Path> folder) {
        if (folder.isEmpty()) {
            if (!source.ownFolder()) {
                source.folder()
                        .get()
                        .ifPresent(path -> news.note(path + " does not exist. Trying again automatically."));
            }
            return end(false);
        }
        Optional<NightSession.Tonight> tonight = session.tonight();
        if (tonight.isEmpty()) {
            return end(false);
        }
        RunningWatch running = watching;
        if (running != null && !isEnding && running.suits(folder.get(), tonight.get())) {
            return true;
        }
        // The screw movement measured by the old watch must be in the log before the next watch reads it.
        if (!end(true)) {
            return false;
        }
        begin(folder.get(), session.tonight().orElseThrow());
        return true;
    }

    private void begin(Path folder, NightSession.Tonight tonight) {
        LiveView view = new LiveView(tonight.state().begun().site(), news::arrived, A_SECOND_LATER);
        FrameFolder frames =
                resumedFolder(folder, tonight.id()).orElseGet(() -> FrameFolder.of(folder, realTime, false));
        watching = RunningWatch.start(frames, source, session, tonight, event -> onEvent(event, view));
        news.outdated();
    }

    /**
     * The folder state that tonight's last watch left: frames may have arrived between its end and the start of this
     * one.
     */
    private Optional<FrameFolder> resumedFolder(Path folder, NightId night) {
        return Optional.ofNullable(ended)
                .filter(last -> last.night().equals(night) && last.folder().equals(folder))
                .map(last -> last.task().frames());
    }

    /**
     * Whether the watch has ended; if not, it is still processing a frame.
     *
     * @param isContinued whether another watch follows, which must not miss a frame
     */
    private boolean end(boolean isContinued) {
        RunningWatch running = watching;
        if (running != null) {
            running.watch().close();
            isEnding = running.isRunning();
            if (!isEnding) {
                ended = running;
                watching = null;
            }
        }
        ended = isContinued ? ended : null;
        return !isEnding;
    }

    /** The last confirmation; the same from another device adds nothing. */
    private record LastConfirmation(NightId night, long from, TurnConfirmation confirmation) {}

    /**
     * Confirms that the screws are where they should be, and logs what the frames measured of their turning.
     *
     * @param night the night that the confirming page knew of
     * @param lastSeq the number of its last event then
     */
    public TurnConfirmation confirmTurn(NightId night, long lastSeq) {
        refreshing.lock();
        try {
            Optional<TurnConfirmation> before = lastConfirmation
                    .filter(last -> last.night().equals(night) && last.from() == lastSeq)
                    .map(LastConfirmation::confirmation);
            if (before.isPresent()) {
                return before.get();
            }
            RunningWatch running = watching;
            boolean isUnchanged = running != null
                    && session.tonight()
                            .filter(now -> now.id().equals(night) && running.hasLoggedAllSince(lastSeq, now.events()))
                            .isPresent();
            if (running == null || !isUnchanged) {
                return TurnConfirmation.OTHERWISE;
            }
            if (!end(true)) {
                return TurnConfirmation.SOON;
            }
            update();
            OptionalLong after = session.tonight().stream()
                    .mapToLong(NightSession.Tonight::lastSeq)
                    .filter(now -> now > lastSeq || running.task().hasLogged(now))
                    .findFirst();
            if (after.isEmpty()) {
                return TurnConfirmation.UNMOVED;
            }
            TurnConfirmation confirmation = TurnConfirmation.as(after.getAsLong());
            lastConfirmation = Optional.of(new LastConfirmation(night, lastSeq, confirmation));
            return confirmation;
        } finally {
            refreshing.unlock();
        }
    }

    private void onEvent(WatchEvent event, LiveView view) {
        if (event instanceof WatchEvent.Noted noted) {
            news.note(noted.line());
        } else if (event instanceof WatchEvent.NotLogged notLogged) {
            news.note(notLogged.line());
        }
        view.on(event);
    }

    /** Ends the watch, which logs where the screws have moved the axis; it can be opened again. */
    @Override
    public void close() {
        refreshing.lock();
        try {
            ScheduledExecutorService timer = scheduler;
            scheduler = null;
            if (timer != null) {
                timer.shutdown();
            }
            end(false);
            refreshedAt = -1;
        } finally {
            refreshing.unlock();
        }
    }
}
