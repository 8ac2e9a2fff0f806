package polewright.cli;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import polewright.operations.Pause;

/**
 * Whether to continue, until the process is interrupted (Ctrl-C): then the current step is completed before the process
 * ends.
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

    /** An interrupted wait ends everything. */
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
            // The shutdown hook is already running and will end too.
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
