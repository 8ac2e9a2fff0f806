package polewright.image.decode;

/**
 * Brings the four phases of a 2 × 2 Bayer mosaic to the same level and spread, so that no chequerboard pattern hides
 * the stars.
 *
 * <p>The background differs between colours in level and, with a gradient or vignetting, in slope, and each filter has
 * its own noise. Each phase is therefore shifted by its median and scaled by its spread to the mean of the four. The
 * camera's bias need not be known.
 */
final class BayerChannelBalance {
    /** Filters do not differ by more than this; a larger ratio comes from an almost constant phase. */
    private static final double MOST_STRETCH = 4;

    private BayerChannelBalance() {}

    /**
     * Balances in place. Saturated pixels stay saturated.
     *
     * @param full saturation value before
     * @return saturation value after: the highest of the four phases'
     */
    static float level(int width, int height, float[] pixels, float full) {
        if (width < 2 || height < 2) {
            return full;
        }
        PixelLevels[] phases = new PixelLevels[4];
        double level = 0;
        double spread = 0;
        for (int phase = 0; phase < 4; phase++) {
            phases[phase] = PixelLevels.of(pixels, width, height, phase & 1, phase >> 1, 2);
            level += phases[phase].level() / 4;
            spread += phases[phase].spread() / 4;
        }
        if (Double.isNaN(level)) {
            return full;
        }
        double[] stretch = new double[4];
        double levelledFull = Double.NEGATIVE_INFINITY;
        for (int phase = 0; phase < 4; phase++) {
            stretch[phase] = stretch(phases[phase], spread);
            levelledFull = Math.max(levelledFull, level + (full - phases[phase].level()) * stretch[phase]);
        }
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int phase = (x & 1) | (y & 1) << 1;
                int at = y * width + x;
                pixels[at] = pixels[at] >= full
                        ? (float) levelledFull
                        : (float) (level + (pixels[at] - phases[phase].level()) * stretch[phase]);
            }
        }
        return (float) levelledFull;
    }

    private static double stretch(PixelLevels phase, double spread) {
        if (phase.spread() <= 0 || spread <= 0) {
            return 1;
        }
        return Math.max(1 / MOST_STRETCH, Math.min(MOST_STRETCH, spread / phase.spread()));
    }
}
