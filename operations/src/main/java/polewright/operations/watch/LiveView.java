package polewright.operations.watch;

import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import polewright.drawing.frame.FrameScene;
import polewright.mount.AxisEstimate;
import polewright.operations.camera.DecodedFrame;
import polewright.operations.camera.PlacedFrame;
import polewright.operations.picture.PlacedScene;
import polewright.operations.picture.ScreenPicture;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.place.Site;

/**
 * The newest frame of a watch, ready to be shown. Its picture is made while its stars are matched, and earlier frames
 * are released.
 */
public final class LiveView implements WatchListener {
    private final Site site;
    private final Consumer<Shot> ready;
    private final Executor later;
    private final AtomicReference<@Nullable Shot> newest = new AtomicReference<>();
    private @Nullable String pictured;
    private long arrival;
    private boolean isShown;
    private CompletableFuture<ScreenPicture> picture = new CompletableFuture<>();
    private Optional<AxisEstimate> axis = Optional.empty();
    private long number;

    /**
     * A frame ready to be shown.
     *
     * @param number of it among all that were shown, from 1
     * @param name of its file
     * @param picture its image
     * @param frame its overlay, if its place in the sky is known
     * @param step its result, if any
     * @param refusal why it could not be used, and what to do
     */
    public record Shot(
            long number,
            String name,
            ScreenPicture picture,
            Optional<FrameScene> frame,
            Optional<WatchStep> step,
            Optional<String> refusal) {
        /** Whether its result is not known yet. */
        public boolean isPending() {
            return frame.isEmpty() && step.isEmpty() && refusal.isEmpty();
        }
    }

    /**
     * A view that shows a frame once its result is known.
     *
     * @param ready receives each frame that can be shown
     */
    public LiveView(Site site, Consumer<Shot> ready) {
        this(site, ready, tooSoon -> {});
    }

    /**
     * A view that shows a frame without its result if matching takes long.
     *
     * @param ready receives each frame that can be shown, in the watching thread or the executor's
     * @param later runs a task after the longest acceptable wait
     */
    public LiveView(Site site, Consumer<Shot> ready, Executor later) {
        this.site = site;
        this.ready = ready;
        this.later = later;
    }

    /** The last frame that could be shown; may be called by any thread. */
    public Optional<Shot> newest() {
        return Optional.ofNullable(newest.get());
    }

    @Override
    public synchronized void on(WatchEvent event) {
        if (event instanceof WatchEvent.Arrived arrived) {
            DecodedFrame decoded = arrived.frame();
            // The pixels are released as soon as the picture is made, because they take much memory.
            pictured = decoded.name();
            isShown = false;
            picture = CompletableFuture.supplyAsync(() -> ScreenPicture.of(decoded));
            long now = ++arrival;
            later.execute(() -> showUnlessShown(now));
        } else if (event instanceof WatchEvent.Refused refused) {
            show(refused.frame(), Optional.empty(), Optional.empty(), Optional.of(refused.line()));
        } else if (event instanceof WatchEvent.Told told) {
            axis = told.step().axisNow();
            Optional<FrameScene> frame = isPictured(told.frame().name())
                    ? Optional.of(live(told.frame(), told.attitude()))
                    : Optional.empty();
            show(told.frame().name(), frame, Optional.of(told.step()), Optional.empty());
        }
    }

    private FrameScene live(PlacedFrame frame, CameraAttitude attitude) {
        return PlacedScene.onScreen(frame, attitude, site, axis);
    }

    private synchronized void showUnlessShown(long which) {
        if (which == arrival && pictured != null && !isShown) {
            show(pictured, Optional.empty(), Optional.empty(), Optional.empty());
        }
    }

    private boolean isPictured(String name) {
        return name.equals(pictured);
    }

    /** Of several simultaneous frames only the last is shown. */
    private void show(String name, Optional<FrameScene> frame, Optional<WatchStep> step, Optional<String> refusal) {
        if (!isPictured(name)) {
            return;
        }
        try {
            isShown = true;
            Shot shot = new Shot(++number, name, picture.get(), frame, step, refusal);
            newest.set(shot);
            ready.accept(shot);
        } catch (ExecutionException e) {
            throw new IllegalStateException("a picture was not drawn", e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
