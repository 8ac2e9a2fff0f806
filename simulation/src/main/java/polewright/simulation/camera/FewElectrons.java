package polewright.simulation.camera;

import java.util.SplittableRandom;

/**
 * Draws small numbers of electrons from Poisson's distribution, exactly and fast enough for millions of pixels.
 *
 * <p>A mean is split into a multiple of 1/16, whose distribution is inverted with a table, and a remainder, which
 * nearly always gives no electron: the sum of two independent Poisson numbers is Poisson with the summed mean.
 */
final class FewElectrons {
    /** Means at or above this are not supported. */
    static final int LIMIT = 12;

    private static final int PER_ELECTRON = 16;
    private static final int GUIDES = 256;
    private static final double UNIT_32_BITS = 0x1p-32;
    private static final double[][] CUMULATIVE = new double[LIMIT * PER_ELECTRON][];
    private static final byte[][] FIRST = new byte[LIMIT * PER_ELECTRON][GUIDES];

    static {
        for (int i = 0; i < CUMULATIVE.length; i++) {
            CUMULATIVE[i] = cumulative((double) i / PER_ELECTRON);
            int count = 0;
            for (int guide = 0; guide < GUIDES; guide++) {
                while (CUMULATIVE[i][count] <= (double) guide / GUIDES) {
                    count++;
                }
                FIRST[i][guide] = (byte) count;
            }
        }
    }

    private FewElectrons() {}

    private static double[] cumulative(double mean) {
        double[] cumulative = new double[64];
        double probability = Math.exp(-mean);
        double sum = 0;
        for (int count = 0; count < cumulative.length; count++) {
            sum += probability;
            cumulative[count] = sum;
            probability *= mean / (count + 1);
        }
        // Rounding may leave the sum short of 1, and a draw must not run off the end.
        cumulative[cumulative.length - 1] = 2;
        return cumulative;
    }

    /**
     * One draw.
     *
     * @param mean from 0 to below {@link #LIMIT}
     */
    static int drawn(double mean, SplittableRandom random) {
        long bits = random.nextLong();
        int table = (int) (mean * PER_ELECTRON);
        double chance = (bits >>> 32) * UNIT_32_BITS;
        double[] cumulative = CUMULATIVE[table];
        int count = FIRST[table][(int) (chance * GUIDES)];
        while (chance >= cumulative[count]) {
            count++;
        }
        return count + remainder(mean - (double) table / PER_ELECTRON, (bits & 0xffff_ffffL) * UNIT_32_BITS);
    }

    /** For a mean below 1/16: exp by its series, accurate to 1e-8. */
    private static int remainder(double mean, double chance) {
        double probability = 1 - mean * (1 - mean / 2 * (1 - mean / 3 * (1 - mean / 4)));
        int count = 0;
        double left = chance;
        while (left >= probability && count < 8) {
            left -= probability;
            count++;
            probability *= mean / count;
        }
        return count;
    }
}
