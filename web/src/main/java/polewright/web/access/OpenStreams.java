package polewright.web.access;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The open event streams, each of which occupies a connection. A browser that opens more than its share loses its
 * oldest, and a device that is revoked loses all.
 */
public final class OpenStreams {
    /** Most streams of one device: a browser keeps six connections at most, and may leave some behind when it sleeps. */
    public static final int MOST_OF_A_DEVICE = 8;

    private final Map<String, Deque<Runnable>> ofDevice = new HashMap<>();

    /**
     * Registers a stream that was opened.
     *
     * @param device the device that opened it
     * @param end closes it; its equality is its identity
     */
    public void opened(String device, Runnable end) {
        List<Runnable> surplus = new ArrayList<>();
        synchronized (this) {
            Deque<Runnable> streams = ofDevice.computeIfAbsent(device, first -> new ArrayDeque<>());
            streams.addLast(end);
            while (streams.size() > MOST_OF_A_DEVICE) {
                surplus.add(streams.removeFirst());
            }
        }
        surplus.forEach(Runnable::run);
    }

    /** Removes a stream that was closed. */
    public synchronized void closed(String device, Runnable end) {
        Deque<Runnable> streams = ofDevice.get(device);
        if (streams != null && streams.remove(end) && streams.isEmpty()) {
            ofDevice.remove(device);
        }
    }

    /** The number of streams that a device has open. */
    public synchronized int of(String device) {
        Deque<Runnable> streams = ofDevice.get(device);
        return streams == null ? 0 : streams.size();
    }
}
