package polewright.image.decode;

import polewright.sky.InputRefused;

/**
 * Conversion from stored to physical values.
 *
 * @param zero BZERO
 * @param scale BSCALE
 * @param blank stored value of an undefined pixel; NaN if there is none
 * @param full largest value of the type; infinite for floating point
 */
record FitsScaling(double zero, double scale, double blank, float full) {
    static FitsScaling of(FitsUnit unit, String bitpixKeyword) {
        int bitpix = unit.header().getIntValue(bitpixKeyword);
        double zero = unit.header().getDoubleValue("BZERO", 0);
        double scale = unit.header().getDoubleValue("BSCALE", 1);
        if (!Double.isFinite(zero) || !Double.isFinite(scale) || scale == 0) {
            throw new InputRefused("its BSCALE is " + scale + " and its BZERO is " + zero, "take the frame again");
        }
        if (bitpix < 0) {
            return new FitsScaling(zero, scale, Double.NaN, Float.POSITIVE_INFINITY);
        }
        double blank = unit.header().getDoubleValue("BLANK", unit.header().getDoubleValue("ZBLANK", Double.NaN));
        double most = bitpix == 8 ? 255 : Math.scalb(1.0, bitpix - 1) - 1;
        double least = bitpix == 8 ? 0 : -Math.scalb(1.0, bitpix - 1);
        return new FitsScaling(zero, scale, blank, (float) (zero + scale * (scale > 0 ? most : least)));
    }

    /** One value; NaN for an undefined pixel. */
    double of(double stored) {
        return stored == blank ? Double.NaN : zero + scale * stored;
    }

    void apply(double[] row) {
        for (int x = 0; x < row.length; x++) {
            row[x] = of(row[x]);
        }
    }
}
