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

/** Tells pages that they are old; one that slept, or was cut off, as soon as it is back. */
final class EventStreams implements AutoCloseable {
    private final AccessControl door;
    private final Map<String, LogWatch> watches = new HashMap<>();
    // As many as there are slow phones. At the end, when all pages go, news are let fall.
    private final ExecutorService bearers = new ThreadPoolExecutor(
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

    EventStreams(List<NightSession> desks, AccessControl door) {
        this.door = door;
        desks.forEach(desk -> watches.put(desk.prefix(), LogWatch.of(desk)));
    }

    void add(JavalinConfig config, NightSession desk) {
        config.routes.sse(desk.prefix() + "/changes", client -> follow(client, desk));
    }

    private void follow(SseClient client, NightSession desk) {
        LogWatch watch = Objects.requireNonNull(watches.get(desk.prefix()));
        PageStream stream = new PageStream(client, () -> door.isStillIn(client.ctx()), bearers);
        LongConsumer changed = stream::logStands;
        LongConsumer framed = stream::framesStand;
        Runnable beat = stream::beat;
        Runnable end = stream::end;
        String device = door.deviceOf(client.ctx());
        client.keepAlive();
        client.onClose(() -> {
            watch.forget(changed, beat);
            desk.frames().ifPresent(frames -> frames.forget(framed));
            door.streams().closed(device, end);
        });
        door.streams().opened(device, end);
        watch.tell(changed, beat);
        desk.frames().ifPresent(frames -> {
            frames.tell(framed);
            framed.accept(frames.stand().number());
        });
        try {
            changed.accept(desk.stand());
        } catch (InputRefused busyOrDamaged) {
            // The page says so when it is asked for; the watch tells as soon as the log can be read.
        }
    }

    @Override
    public void close() {
        watches.values().forEach(LogWatch::close);
        bearers.shutdownNow();
    }
}
