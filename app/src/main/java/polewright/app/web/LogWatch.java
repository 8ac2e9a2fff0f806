package polewright.app.web;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import polewright.night.log.NightLog;
import polewright.sky.InputRefused;

/**
 * Tells whoever asks when something was added to a log, by this program or another: a command at a terminal shows on the
 * phone as soon as one that was posted.
 */
final class LogWatch implements AutoCloseable {
    // Every device is to show the same within a second, and a look takes a fraction of a millisecond.
    private static final long BETWEEN_LOOKS_MILLIS = 250;

    private final Path file;
    private final List<Runnable> listeners = new CopyOnWriteArrayList<>();
    private final ScheduledExecutorService looking = Executors.newSingleThreadScheduledExecutor(task -> {
        Thread thread = new Thread(task, "watch of the log");
        thread.setDaemon(true);
        return thread;
    });
    private volatile long stand = -1;

    private LogWatch(Path file) {
        this.file = file;
    }

    static LogWatch of(Path file) {
        LogWatch watch = new LogWatch(file);
        var unused = watch.looking.scheduleWithFixedDelay(
                watch::look, BETWEEN_LOOKS_MILLIS, BETWEEN_LOOKS_MILLIS, TimeUnit.MILLISECONDS);
        return watch;
    }

    /** From now on; {@link #forget} ends it. */
    void tell(Runnable listener) {
        listeners.add(listener);
    }

    void forget(Runnable listener) {
        listeners.remove(listener);
    }

    private void look() {
        if (!Files.exists(file)) {
            return;
        }
        long now;
        try (NightLog log = NightLog.open(file)) {
            now = log.stand();
        } catch (InputRefused busyOrDamaged) {
            // The page says so when it is asked for; the next look may find it well again.
            return;
        }
        if (now != stand) {
            boolean isFirst = stand < 0;
            stand = now;
            if (!isFirst) {
                listeners.forEach(Runnable::run);
            }
        }
    }

    @Override
    public void close() {
        looking.shutdownNow();
    }
}
