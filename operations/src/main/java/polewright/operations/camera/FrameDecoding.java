package polewright.operations.camera;

import java.time.Duration;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import polewright.image.Frame;
import polewright.image.decode.DecodeDeadline;
import polewright.image.decode.DecodeLimits;
import polewright.image.decode.DecodeOptions;
import polewright.image.decode.FrameCompleteness;
import polewright.image.decode.FrameReader;
import polewright.sky.InputRefused;

/**
 * Decodes frames with a deadline, each in its own thread: a decode that never ends blocks neither the next one nor the
 * calling thread. Our decoders stop themselves when their time is up. A library that cannot be interrupted is
 * abandoned; only a few abandoned decodes are allowed, because each occupies a core and a frame's memory. Thread-safe.
 */
public final class FrameDecoding {
    private static final int MOST_ABANDONED = 2;
    // From the deadline until an interruptible decoder has noticed.
    private static final Duration TO_STOP = Duration.ofSeconds(1);

    // Shared by the whole program, because the decodes load one machine.
    private static final AtomicInteger ABANDONED = new AtomicInteger();

    private FrameDecoding() {}

    /**
     * Decodes the picture in a file.
     *
     * @throws InputRefused if there is none, or it takes longer than its limits allow; in one line
     */
    public static Frame read(byte[] content, String name, DecodeOptions options) {
        return within(
                options.limits().longest(),
                name,
                deadline -> FrameReader.read(content, name, options.withDeadline(deadline)));
    }

    /**
     * Whether a file is complete.
     *
     * @throws InputRefused if that takes longer than the limits allow; in one line
     */
    public static FrameCompleteness completeness(byte[] content, String name, DecodeLimits limits) {
        return within(limits.longest(), name, deadline -> FrameCompleteness.of(content, name, deadline));
    }

    /**
     * The result of a computation on a frame, if it arrives in time.
     *
     * @param name of the frame's file
     * @param work receives its deadline, to check it where it can
     */
    static <T> T within(Duration longest, String name, Function<DecodeDeadline, T> work) {
        int busy = ABANDONED.get();
        if (busy >= MOST_ABANDONED) {
            throw new InputRefused(
                    name + ": " + busy + " damaged frames before it are still being decoded",
                    "stop Polewright and start it again, then take this frame again");
        }
        Decode<T> decode = new Decode<>(name, work);
        decode.thread.start();
        try {
            return decode.task.get(longest.toNanos(), TimeUnit.NANOSECONDS);
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException refused) {
                throw refused;
            }
            throw new IllegalStateException("a frame was not decoded", e.getCause());
        } catch (TimeoutException e) {
            decode.stop(TO_STOP);
            throw new InputRefused(
                    name + ": after " + longest.toSeconds() + " s it is still not decoded, so it is probably damaged",
                    "copy it again from the camera, or take another frame");
        } catch (InterruptedException e) {
            decode.stop(Duration.ZERO);
            Thread.currentThread().interrupt();
            throw new InputRefused(name + ": decoding was interrupted", "take it again");
        }
    }

    /** A decode that may have to be abandoned. */
    private static final class Decode<T> {
        private final FutureTask<T> task;
        private final Thread thread;
        private volatile boolean isPast;
        private boolean hasEnded;
        private boolean isAbandoned;

        Decode(String name, Function<DecodeDeadline, T> work) {
            task = new FutureTask<>(() -> work.apply(() -> isPast));
            thread = new Thread(
                    () -> {
                        task.run();
                        ended();
                    },
                    "decoder of " + name);
            thread.setDaemon(true);
        }

        void stop(Duration patience) {
            isPast = true;
            thread.interrupt();
            try {
                if (!patience.isZero()) {
                    thread.join(patience.toMillis());
                }
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
            abandonUnlessEnded();
        }

        private synchronized void abandonUnlessEnded() {
            if (!hasEnded) {
                isAbandoned = true;
                ABANDONED.incrementAndGet();
            }
        }

        private synchronized void ended() {
            hasEnded = true;
            if (isAbandoned) {
                ABANDONED.decrementAndGet();
            }
        }
    }
}
