package polewright.cli;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import polewright.operations.Pause;

/**
 * Whether to go on, until the process is told to end (Ctrl-C): then what is under way is brought to its end before the
 * process is.
 */
public final class UntilStopped implements AutoCloseable {
    private static final long LONGEST_END_SECONDS = 20;

    private final CountDownLatch ended = new CountDownLatch(1);
    private final Thread hook = new Thread(this::stopAndWait, "end of the watch");
    private volatile boolean stopped;

    private UntilStopped() {}

    public static UntilStopped byInterrupt() {
        UntilStopped running = new UntilStopped();
        Runtime.getRuntime().addShutdownHook(running.hook);
        return running;
    }

    public boolean isStopped() {
        return stopped;
    }

    /** A wait that is interrupted ends all. */
    public void pause(Pause pause, Duration length) {
        try {
            pause.of(length);
        } catch (InterruptedException e) {
            stopped = true;
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void close() {
        ended.countDown();
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException processIsEnding) {
            // Then the hook runs already, and now it ends too.
        }
    }

    private void stopAndWait() {
        stopped = true;
        try {
            var unused = ended.await(LONGEST_END_SECONDS, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
