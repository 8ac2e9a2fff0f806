package polewright.web;

import io.javalin.config.JavalinConfig;
import io.javalin.http.sse.SseClient;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.LongConsumer;
import polewright.sky.InputRefused;
import polewright.web.access.AccessControl;
import polewright.web.session.NightSession;

/**
 * Notifies open pages by server-sent events that their content is out of date. A page that was asleep or disconnected
 * is notified as soon as it reconnects.
 */
final class EventStreams implements AutoCloseable {
    private final AccessControl access;
    private final Map<String, LogWatch> watches = new HashMap<>();
    // As many threads as there are slow phones. On shutdown, when all pages go, pending news is dropped.
    private final ExecutorService senders = new ThreadPoolExecutor(
            0,
            Integer.MAX_VALUE,
            10,
            TimeUnit.SECONDS,
            new SynchronousQueue<>(),
            task -> {
                Thread thread = new Thread(task, "bearer of news");
                thread.setDaemon(true);
                return thread;
            },
            new ThreadPoolExecutor.DiscardPolicy());

    EventStreams(List<NightSession> sessions, AccessControl access) {
        this.access = access;
        sessions.forEach(session -> watches.put(session.prefix(), LogWatch.of(session)));
    }

    void add(JavalinConfig config, NightSession session) {
        config.routes.sse(session.prefix() + "/changes", client -> follow(client, session));
    }

    private void follow(SseClient client, NightSession session) {
        LogWatch watch = Objects.requireNonNull(watches.get(session.prefix()));
        PageStream stream = new PageStream(client, () -> access.isStillIn(client.ctx()), senders);
        LongConsumer changed = stream::logChanged;
        LongConsumer framed = stream::framesChanged;
        Runnable beat = stream::beat;
        Runnable end = stream::end;
        String device = access.deviceOf(client.ctx());
        client.keepAlive();
        client.onClose(() -> {
            watch.removeListener(changed, beat);
            session.frames().ifPresent(frames -> frames.removeListener(framed));
            access.streams().closed(device, end);
        });
        access.streams().opened(device, end);
        watch.addListener(changed, beat);
        session.frames().ifPresent(frames -> {
            frames.addListener(framed);
            framed.accept(frames.status().number());
        });
        try {
            changed.accept(session.eventCount());
        } catch (InputRefused busyOrDamaged) {
            // The page reports the problem when it is requested; the watch notifies as soon as the log can be read.
        }
    }

    @Override
    public void close() {
        watches.values().forEach(LogWatch::close);
        senders.shutdownNow();
    }
}
