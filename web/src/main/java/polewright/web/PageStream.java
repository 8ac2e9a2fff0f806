package polewright.web;

import io.javalin.http.sse.SseClient;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;

/**
 * What one page waits on for news. Whoever has news leaves them here and goes on: a phone at the edge of the Wi-Fi is sent
 * them at its own pace, and of several that came meanwhile the last. Safe for use by several threads.
 */
final class PageStream {
    private final SseClient client;
    private final BooleanSupplier isStillIn;
    private final Executor bearers;
    private final Count stand;
    private final Count frame;
    private final AtomicBoolean isBeatDue = new AtomicBoolean();
    // How often it was woken since the bearer last looked; above zero there is a bearer.
    private final AtomicInteger woken = new AtomicInteger();

    /** What is counted on the page under a name, and what it has come to since. */
    private static final class Count {
        private final String event;
        private final AtomicLong newest;
        private long told;

        Count(String event, String shown) {
            this.event = event;
            told = shown.matches("\\d{1,12}") ? Long.parseLong(shown) : -1;
            newest = new AtomicLong(told);
        }
    }

    /**
     * A stream on which nothing was sent yet.
     *
     * @param isStillIn whether the page's device is still let in
     * @param bearers on whose threads news are sent
     */
    PageStream(SseClient client, BooleanSupplier isStillIn, Executor bearers) {
        this.client = client;
        this.isStillIn = isStillIn;
        this.bearers = bearers;
        stand = new Count("changed", word("stand"));
        frame = new Count("frame", word("frame"));
    }

    private String word(String name) {
        String word = client.ctx().queryParam(name);
        return word == null ? "" : word;
    }

    /** Where the log stands. */
    void logStands(long events) {
        stand.newest.set(events);
        wake();
    }

    /** What was last new with the frames. */
    void framesStand(long number) {
        frame.newest.set(number);
        wake();
    }

    /** Lets the connection not fall silent, and ends it once the device is let in no more. */
    void beat() {
        isBeatDue.set(true);
        wake();
    }

    void end() {
        client.close();
    }

    private void wake() {
        if (woken.getAndIncrement() == 0) {
            bearers.execute(this::send);
        }
    }

    private void send() {
        int seen = woken.get();
        try {
            do {
                if (!client.terminated()) {
                    tell(stand);
                    tell(frame);
                    sendBeat();
                }
                seen = woken.addAndGet(-seen);
            } while (seen != 0);
        } catch (RuntimeException broken) {
            // Whoever is still there connects anew, and hears what is new then.
            client.close();
        }
    }

    private void tell(Count count) {
        long newest = count.newest.get();
        if (newest != count.told) {
            count.told = newest;
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
