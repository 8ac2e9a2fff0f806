package polewright.drawing;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * A scale along one side of a plot.
 *
 * @param low the value at its start
 * @param high the value at its end
 * @param from where it starts on the paper
 * @param to where it ends on the paper
 */
public record Scale(double low, double high, double from, double to) {
    /** A scale of time, in seconds. */
    public static Scale of(Instant low, Instant high, double from, double to) {
        return new Scale((double) low.getEpochSecond(), (double) high.getEpochSecond(), from, to);
    }

    public double at(double value) {
        return from + (value - low) / (high - low) * (to - from);
    }

    public double at(Instant time) {
        return at((double) time.getEpochSecond());
    }

    public boolean holds(double value) {
        return value >= low && value <= high;
    }

    /** The multiples of a step on the scale, ends included. */
    public List<Double> multiples(double step) {
        List<Double> values = new ArrayList<>();
        // Allowance for the last digit of a step such as 0.1.
        long first = (long) Math.ceil(low / step - 1e-9);
        long last = (long) Math.floor(high / step + 1e-9);
        for (long i = first; i <= last; i++) {
            values.add((double) i * step);
        }
        return values;
    }
}
