package polewright.frames.decode;

import java.util.OptionalDouble;

/**
 * The value at which a pixel is full.
 *
 * @param told by the file's header
 * @param typeFull the largest value that the file's type can hold; infinite for floating point
 */
record Saturation(OptionalDouble told, float typeFull) {
    /** A level told that this share of the frame reaches is a mistake, or another thing. */
    private static final double MOST_FULL = 0.1;

    private static final int PILE = 8;
    /** A pile at the top is held against all that lies in this share of the range below it. */
    private static final double NEAR_TOP = 0.1;

    /**
     * The level told, else where pixels pile up at the largest value of the frame, else the type's largest.
     *
     * <p>Twelve- and fourteen-bit cameras fill at 4095 or 16383, or at those times 16 or 4, and a header seldom says
     * which. Full pixels all have one value, the largest; a sky and its stars thin out toward theirs. So the largest
     * value is taken for full when at least eight pixels have it, and more than lie in the tenth of the range (from the
     * frame's sky up) below it.
     */
    float of(float[] pixels) {
        if (told.isPresent() && isPlausible((float) told.getAsDouble(), pixels)) {
            return (float) told.getAsDouble();
        }
        float largest = Float.NEGATIVE_INFINITY;
        float second = Float.NEGATIVE_INFINITY;
        for (float value : pixels) {
            // False for NaN.
            if (value > second) {
                if (value > largest) {
                    second = largest;
                    largest = value;
                } else if (value < largest) {
                    second = value;
                }
            }
        }
        if (largest >= typeFull || second == Float.NEGATIVE_INFINITY) {
            return typeFull;
        }
        double sky = Levels.of(pixels).level();
        // At least one value further down: those of an 8-bit frame, or of a shifted one, lie far apart.
        float near = Math.min(second, (float) (largest - NEAR_TOP * (largest - sky)));
        int top = 0;
        int below = 0;
        for (float value : pixels) {
            if (value >= near) {
                if (value == largest) {
                    top++;
                } else {
                    below++;
                }
            }
        }
        boolean piled = top >= PILE && top > below && top < MOST_FULL * pixels.length;
        return piled ? largest : typeFull;
    }

    private static boolean isPlausible(float level, float[] pixels) {
        int full = 0;
        for (float value : pixels) {
            if (value >= level) {
                full++;
            }
        }
        return level > 0 && full < MOST_FULL * pixels.length;
    }
}
