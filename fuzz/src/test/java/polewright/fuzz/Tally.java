package polewright.fuzz;

import java.time.Duration;
import java.util.Locale;

/** Counts the executions of this process; printed at its end if {@code polewright.fuzz.tally} is set. */
final class Tally {
    private static final Tally ALL = new Tally();

    private long executions;
    private long refused;
    private Duration longest = Duration.ZERO;
    private long largest;
    private int largestInput;

    static {
        if (Boolean.getBoolean("polewright.fuzz.tally")) {
            Runtime.getRuntime().addShutdownHook(new Thread(ALL::print));
        }
    }

    private Tally() {}

    static void count(byte[] input, Execution.Cost cost) {
        ALL.add(input, cost);
    }

    private synchronized void add(byte[] input, Execution.Cost cost) {
        executions++;
        refused += cost.refused() ? 1 : 0;
        longest = cost.time().compareTo(longest) > 0 ? cost.time() : longest;
        if (cost.allocated() > largest) {
            largest = cost.allocated();
            largestInput = input.length;
        }
    }

    private synchronized void print() {
        System.out.printf(
                Locale.ROOT,
                "TALLY executions %d, accepted %d, refused %d; longest %d ms; largest allocation %.2f MB (input of %d bytes)%n",
                executions,
                executions - refused,
                refused,
                longest.toMillis(),
                largest / (double) Allowance.MEGABYTE,
                largestInput);
    }
}
