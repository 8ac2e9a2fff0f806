package polewright.web;

import io.javalin.http.Context;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import polewright.web.access.Caller;

/** Makes pages, and leaves one off when the browser that asked for it has gone. */
final class PageMaking implements AutoCloseable {
    // Most pages are made by then.
    private static final long BETWEEN_LOOKS_MILLIS = 250;

    private final ExecutorService makers = Executors.newCachedThreadPool(task -> {
        Thread thread = new Thread(task, "maker of a page");
        thread.setDaemon(true);
        return thread;
    });

    /**
     * What is made for a request that only reads; empty if the client has gone. The thread that makes it is interrupted
     * then, and ends at the next {@link polewright.sky.Interruption#check}.
     */
    <T> Optional<T> made(Context ctx, Callable<T> making) {
        Caller caller = new Caller(ctx);
        Future<T> made = makers.submit(making);
        try {
            while (true) {
                try {
                    return Optional.of(made.get(BETWEEN_LOOKS_MILLIS, TimeUnit.MILLISECONDS));
                } catch (TimeoutException notYet) {
                    if (caller.hasGone()) {
                        made.cancel(true);
                        return Optional.empty();
                    }
                }
            }
        } catch (InterruptedException e) {
            made.cancel(true);
            Thread.currentThread().interrupt();
            return Optional.empty();
        } catch (CancellationException leftOff) {
            return Optional.empty();
        } catch (ExecutionException failed) {
            if (failed.getCause() instanceof RuntimeException broken) {
                throw broken;
            }
            if (failed.getCause() instanceof Error broken) {
                throw broken;
            }
            throw new IllegalStateException(failed.getCause());
        }
    }

    @Override
    public void close() {
        makers.shutdownNow();
    }
}
