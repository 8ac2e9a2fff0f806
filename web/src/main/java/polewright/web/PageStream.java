package polewright.web;

import io.javalin.http.sse.SseClient;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;

/**
 * The server-sent events of one page. News is left here without waiting: a phone at the edge of the Wi-Fi receives it
 * at its own pace, and of several changes only the latest. Thread-safe.
 */
final class PageStream {
    private final SseClient client;
    private final BooleanSupplier isStillIn;
    private final Executor senders;
    private final Count changed;
    private final Count frame;
    private final AtomicBoolean isBeatDue = new AtomicBoolean();
    // Wake-ups since the sender last looked; above zero, a sender is running.
    private final AtomicInteger woken = new AtomicInteger();

    /** A counter shown on the page under a name, and its latest value. */
    private static final class Count {
        private final String event;
        private final AtomicLong newest;
        private long sent;

        Count(String event, String shown) {
            this.event = event;
            sent = shown.matches("\\d{1,12}") ? Long.parseLong(shown) : -1;
            newest = new AtomicLong(sent);
        }
    }

    /**
     * A stream on which nothing has been sent yet.
     *
     * @param isStillIn whether the page's device is still admitted
     * @param senders executes the sending
     */
    PageStream(SseClient client, BooleanSupplier isStillIn, Executor senders) {
        this.client = client;
        this.isStillIn = isStillIn;
        this.senders = senders;
        changed = new Count("changed", word("stand"));
        frame = new Count("frame", word("frame"));
    }

    private String word(String name) {
        String word = client.ctx().queryParam(name);
        return word == null ? "" : word;
    }

    /** The number of events in the log. */
    void logChanged(long events) {
        changed.newest.set(events);
        wake();
    }

    /** The number of the latest frame status. */
    void framesChanged(long number) {
        frame.newest.set(number);
        wake();
    }

    /** Keeps the connection from falling silent, and ends it once the device is no longer admitted. */
    void beat() {
        isBeatDue.set(true);
        wake();
    }

    void end() {
        client.close();
    }

    private void wake() {
        if (woken.getAndIncrement() == 0) {
            senders.execute(this::send);
        }
    }

    private void send() {
        int seen = woken.get();
        try {
            do {
                if (!client.terminated()) {
                    send(changed);
                    send(frame);
                    sendBeat();
                }
                seen = woken.addAndGet(-seen);
            } while (seen != 0);
        } catch (RuntimeException broken) {
            // A page that is still open reconnects and then receives what is new.
            client.close();
        }
    }

    private void send(Count count) {
        long newest = count.newest.get();
        if (newest != count.sent) {
            count.sent = newest;
            client.sendEvent(count.event, Long.toString(newest));
        }
    }

    private void sendBeat() {
        if (isBeatDue.getAndSet(false)) {
            if (isStillIn.getAsBoolean()) {
                client.sendComment("still here");
            } else {
                client.close();
            }
        }
    }
}
