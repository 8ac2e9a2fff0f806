package polewright.image.decode;

/**
 * Averages colour planes into grey, one after another into the same pixels.
 *
 * <p>A pixel that is saturated in one colour is saturated: its average would look like the unsaturated core of a star.
 * Until all planes are in, such a pixel is infinite.
 */
final class ColourPlanes {
    private ColourPlanes() {}

    /** Contribution of one colour of a pixel to the average of this many. */
    static float share(float value, float full, int planes) {
        return value >= full ? Float.POSITIVE_INFINITY : value / planes;
    }

    /** Gives pixels that are saturated in some colour the saturation value. */
    static void fill(float[] pixels, float full) {
        for (int i = 0; i < pixels.length; i++) {
            if (pixels[i] == Float.POSITIVE_INFINITY) {
                pixels[i] = full;
            }
        }
    }
}
