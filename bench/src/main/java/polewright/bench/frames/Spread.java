package polewright.bench.frames;

import java.util.Locale;
import java.util.stream.DoubleStream;

/** The distribution of some values. */
public final class Spread {
    private final double[] sorted;

    public Spread(DoubleStream figures) {
        sorted = figures.sorted().toArray();
    }

    public int count() {
        return sorted.length;
    }

    public double median() {
        return quantile(0.5);
    }

    public double most() {
        return quantile(1);
    }

    /** The value below or at which this share of all lies. */
    public double quantile(double share) {
        return sorted.length == 0 ? Double.NaN : sorted[(int) Math.max(0, Math.ceil(share * sorted.length) - 1)];
    }

    /** Median, 95 % and largest. */
    public String inWords(String unit) {
        return String.format(
                Locale.ROOT, "median %.0f, 95 %% %.0f, largest %.0f %s", median(), quantile(0.95), most(), unit);
    }
}
