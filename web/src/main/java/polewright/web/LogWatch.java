package polewright.web;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.LongConsumer;
import polewright.web.session.NightSession;

/**
 * Tells whoever asks when something was added to a log, by this program or another: a command at a terminal shows on the
 * phone as soon as one that was posted.
 */
final class LogWatch implements AutoCloseable {
    // Every device is to show the same within a second, and a look at a file that is as it was takes microseconds.
    private static final long BETWEEN_LOOKS_MILLIS = 250;
    // A connection on which nothing is said is taken for a slow one, and cut.
    private static final long BETWEEN_BEATS_MILLIS = 5000;

    private final NightSession desk;
    private final List<LongConsumer> listeners = new CopyOnWriteArrayList<>();
    private final List<Runnable> beats = new CopyOnWriteArrayList<>();
    private final ScheduledExecutorService looking = Executors.newSingleThreadScheduledExecutor(task -> {
        Thread thread = new Thread(task, "watch of the log");
        thread.setDaemon(true);
        return thread;
    });
    private long stand = -1;

    private LogWatch(NightSession desk) {
        this.desk = desk;
    }

    static LogWatch of(NightSession desk) {
        LogWatch watch = new LogWatch(desk);
        Future<?> unused = watch.looking.scheduleWithFixedDelay(
                watch::look, BETWEEN_LOOKS_MILLIS, BETWEEN_LOOKS_MILLIS, TimeUnit.MILLISECONDS);
        unused = watch.looking.scheduleWithFixedDelay(
                watch::beat, BETWEEN_BEATS_MILLIS, BETWEEN_BEATS_MILLIS, TimeUnit.MILLISECONDS);
        return watch;
    }

    /**
     * From now on; {@link #forget} ends it.
     *
     * @param listener is told where the log stands whenever that is new; it must not wait for anything
     * @param beat is called every few seconds, so that a connection does not fall silent; likewise
     */
    void tell(LongConsumer listener, Runnable beat) {
        listeners.add(listener);
        beats.add(beat);
    }

    void forget(LongConsumer listener, Runnable beat) {
        listeners.remove(listener);
        beats.remove(beat);
    }

    private void look() {
        if (listeners.isEmpty()) {
            return;
        }
        try {
            long now = desk.stand();
            if (now != stand) {
                stand = now;
                listeners.forEach(listener -> listener.accept(now));
            }
        } catch (RuntimeException busyDamagedOrNotBegun) {
            // The page says so when it is asked for; the next look, which would not come after a failure, may find it
            // well again.
        }
    }

    private void beat() {
        beats.forEach(Runnable::run);
    }

    @Override
    public void close() {
        looking.shutdownNow();
    }
}
