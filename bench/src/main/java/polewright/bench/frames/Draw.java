package polewright.bench.frames;

import java.util.random.RandomGenerator;

/** Random numbers from a range. */
public final class Draw {
    private Draw() {}

    public static double between(double least, double most, RandomGenerator random) {
        return least + (most - least) * random.nextDouble();
    }

    /** Uniform in the logarithm: as often from 1 to 2 as from 10 to 20. */
    public static double logBetween(double least, double most, RandomGenerator random) {
        return least * Math.pow(most / least, random.nextDouble());
    }
}
