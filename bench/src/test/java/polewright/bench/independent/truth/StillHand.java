package polewright.bench.independent.truth;

import java.util.random.RandomGenerator;

/** A random generator without errors: every Gaussian is 0. */
final class StillHand implements RandomGenerator {
    @Override
    public long nextLong() {
        return 0;
    }

    @Override
    public double nextGaussian() {
        return 0;
    }
}
