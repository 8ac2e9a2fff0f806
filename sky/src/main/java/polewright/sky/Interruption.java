package polewright.sky;

import java.util.concurrent.CancellationException;

/** Lets long work end early when its result is no longer wanted. */
public final class Interruption {
    private Interruption() {}

    /**
     * Ends the work that calls it, if its thread was interrupted. To be called in loops that take long; the thread stays
     * interrupted.
     *
     * @throws CancellationException if it was
     */
    public static void check() {
        if (Thread.currentThread().isInterrupted()) {
            throw new CancellationException("the result is no longer wanted");
        }
    }
}
