package polewright.cli;

import java.time.Duration;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import me.tongfei.progressbar.DelegatingProgressBarConsumer;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;
import org.jspecify.annotations.Nullable;
import polewright.operations.Workbench;
import polewright.operations.camera.StepListener;
import polewright.report.text.Wrapping;

/**
 * A progress bar for work that takes over a second, on an interactive terminal: not in a pipe, and not with JSON. It is
 * separate from the results and disappears when the work is done.
 */
final class Progress implements StepListener, AutoCloseable {
    private static final Duration PATIENCE = Duration.ofSeconds(1);
    private static final int UPDATE_MILLIS = 200;
    private static final String CLEAR_LINE = "\r\u001b[2K";

    private final Workbench workbench;
    private final int steps;
    private final @Nullable ScheduledExecutorService later;
    private @Nullable ProgressBar bar;
    private boolean closed;
    private int begun;
    private String step = "";

    private Progress(Workbench workbench, int steps, boolean shown) {
        this.workbench = workbench;
        this.steps = steps;
        if (!shown) {
            later = null;
            return;
        }
        later = Executors.newSingleThreadScheduledExecutor(work -> {
            Thread thread = new Thread(work, "progress");
            thread.setDaemon(true);
            return thread;
        });
        var unused = later.schedule(this::show, PATIENCE.toMillis(), TimeUnit.MILLISECONDS);
    }

    /** For work with this many steps. */
    static Progress of(Workbench workbench, Output output, int steps) {
        return new Progress(workbench, steps, workbench.terminal() && !output.isJson());
    }

    @Override
    public synchronized void begun(String next) {
        begun++;
        step = next;
        update();
    }

    @Override
    public void close() {
        if (later == null) {
            return;
        }
        later.shutdownNow();
        synchronized (this) {
            closed = true;
            if (bar != null) {
                bar.close();
                bar = null;
                workbench.err().print(CLEAR_LINE);
                workbench.err().flush();
            }
        }
    }

    /** Once it has taken long enough; nothing after closing, which may happen while this waits for the lock. */
    synchronized void show() {
        if (closed) {
            return;
        }
        bar = new ProgressBarBuilder()
                .setInitialMax(steps)
                .setStyle(ProgressBarStyle.ASCII)
                .setUpdateIntervalMillis(UPDATE_MILLIS)
                .hideEta()
                .continuousUpdate()
                .setMaxRenderedLength(Wrapping.WIDTH - 1)
                .setConsumer(new DelegatingProgressBarConsumer(this::print, Wrapping.WIDTH - 1))
                .build();
        update();
    }

    private void update() {
        if (bar != null) {
            bar.stepTo(Math.max(0, begun - 1));
            bar.setExtraMessage(" " + step);
        }
    }

    private void print(String line) {
        workbench.err().print("\r" + line);
        workbench.err().flush();
    }
}
