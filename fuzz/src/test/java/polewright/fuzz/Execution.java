package polewright.fuzz;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.time.Duration;
import polewright.sky.InputRefused;

/**
 * Gives one input to one target, and checks what Polewright promises for any input: a result or an {@link
 * InputRefused}, within {@link #LONGEST} and within the target's {@link Allowance}.
 *
 * <p>Time is processor time: on a busy machine an execution may have to wait. One that waits forever is stopped by
 * the fuzzer's own timeout ({@code bench/fuzz}).
 */
final class Execution {
    static final Duration LONGEST = Duration.ofSeconds(2);

    private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

    private Execution() {}

    /** The code under test. */
    @FunctionalInterface
    interface Target {
        /**
         * Reads the input.
         *
         * @throws InputRefused if it cannot be used
         */
        void take(byte[] input);
    }

    /**
     * Gives the input to the target. An execution that is too expensive is repeated, because the first one may have
     * loaded a table or compiled code.
     *
     * @throws Finding if it takes too long or allocates too much
     */
    static void of(Target target, byte[] input, Allowance allowance) {
        of(target, input, allowance, LONGEST);
    }

    static void of(Target target, byte[] input, Allowance allowance, Duration longest) {
        long allowed = allowance.of(input);
        Cost cost = Cost.of(target, input);
        if (cost.isOver(allowed, longest)) {
            cost = Cost.of(target, input);
        }
        Tally.count(input, cost);
        if (cost.isOver(allowed, longest)) {
            throw new Finding("it took " + cost.time().toMillis() + " ms, of " + longest.toMillis() + ", and "
                    + cost.allocated() + " bytes, of " + allowed + " for an input of " + input.length);
        }
    }

    /**
     * The cost of one execution.
     *
     * @param refused whether the input was refused
     * @param time of the processor
     * @param allocated bytes
     */
    record Cost(boolean refused, Duration time, long allocated) {
        private static Cost of(Target target, byte[] input) {
            long allocated = THREADS.getCurrentThreadAllocatedBytes();
            long before = THREADS.getCurrentThreadCpuTime();
            boolean refused = false;
            try {
                target.take(input);
            } catch (InputRefused declared) {
                refused = true;
            }
            return new Cost(
                    refused,
                    Duration.ofNanos(THREADS.getCurrentThreadCpuTime() - before),
                    THREADS.getCurrentThreadAllocatedBytes() - allocated);
        }

        private boolean isOver(long allowed, Duration longest) {
            return time.compareTo(longest) > 0 || allocated > allowed;
        }
    }
}
