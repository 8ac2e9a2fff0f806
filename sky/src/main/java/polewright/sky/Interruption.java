package polewright.sky;

import java.util.concurrent.CancellationException;

/** Lets a long computation end early when its result is no longer wanted. */
public final class Interruption {
    private Interruption() {}

    /**
     * Ends the calling computation if its thread has been interrupted. Call it inside long loops. The thread stays
     * interrupted.
     *
     * @throws CancellationException if the thread has been interrupted
     */
    public static void check() {
        if (Thread.currentThread().isInterrupted()) {
            throw new CancellationException("the result is no longer wanted");
        }
    }
}
