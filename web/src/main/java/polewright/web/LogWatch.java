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
 * Notifies listeners when something is added to a log, by this program or another: a command entered at a terminal
 * appears on the phone as quickly as one posted from a page.
 */
final class LogWatch implements AutoCloseable {
    // Every device should show the same within a second; checking an unchanged file takes microseconds.
    private static final long BETWEEN_LOOKS_MILLIS = 250;
    // A connection without traffic would be cut as too slow.
    private static final long BETWEEN_BEATS_MILLIS = 5000;

    private final NightSession session;
    private final List<LongConsumer> listeners = new CopyOnWriteArrayList<>();
    private final List<Runnable> beats = new CopyOnWriteArrayList<>();
    private final ScheduledExecutorService looking = Executors.newSingleThreadScheduledExecutor(task -> {
        Thread thread = new Thread(task, "watch of the log");
        thread.setDaemon(true);
        return thread;
    });
    private long eventCount = -1;

    private LogWatch(NightSession session) {
        this.session = session;
    }

    static LogWatch of(NightSession session) {
        LogWatch watch = new LogWatch(session);
        Future<?> unused = watch.looking.scheduleWithFixedDelay(
                watch::look, BETWEEN_LOOKS_MILLIS, BETWEEN_LOOKS_MILLIS, TimeUnit.MILLISECONDS);
        unused = watch.looking.scheduleWithFixedDelay(
                watch::beat, BETWEEN_BEATS_MILLIS, BETWEEN_BEATS_MILLIS, TimeUnit.MILLISECONDS);
        return watch;
    }

    /**
     * Starts notifying; {@link #removeListener} ends it.
     *
     * @param listener receives the number of events in the log whenever it changes; must not block
     * @param beat called every few seconds to keep the connection alive; must not block
     */
    void addListener(LongConsumer listener, Runnable beat) {
        listeners.add(listener);
        beats.add(beat);
    }

    void removeListener(LongConsumer listener, Runnable beat) {
        listeners.remove(listener);
        beats.remove(beat);
    }

    private void look() {
        if (listeners.isEmpty()) {
            return;
        }
        try {
            long now = session.eventCount();
            if (now != eventCount) {
                eventCount = now;
                listeners.forEach(listener -> listener.accept(now));
            }
        } catch (RuntimeException unreadable) {
            // The page reports the problem when it is requested. A timer that throws runs no more, and the next check
            // may succeed.
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
