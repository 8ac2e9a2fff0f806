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

/** Renders pages, and gives up when the browser that asked has disconnected. */
final class PageMaking implements AutoCloseable {
    // Most pages are ready by then.
    private static final long BETWEEN_LOOKS_MILLIS = 250;

    private final ExecutorService renderers = Executors.newCachedThreadPool(task -> {
        Thread thread = new Thread(task, "maker of a page");
        thread.setDaemon(true);
        return thread;
    });

    /**
     * The result for a read-only request; empty if the client has disconnected. The rendering thread is then
     * interrupted, and ends at the next {@link polewright.sky.Interruption#check}.
     */
    <T> Optional<T> render(Context ctx, Callable<T> making) {
        Caller caller = new Caller(ctx);
        Future<T> made = renderers.submit(making);
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
        } catch (CancellationException abandoned) {
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
        renderers.shutdownNow();
    }
}
