package polewright.image.decode;

/**
 * Planes of colour averaged into grey, one after another into the same pixels.
 *
 * <p>A pixel that is full in one colour is full: its average would look like a star's unspoilt core. Until all planes are
 * in, such a pixel is infinite.
 */
final class ColourPlanes {
    private ColourPlanes() {}

    /** What one colour of a pixel adds to the average of so many. */
    static float share(float value, float full, int planes) {
        return value >= full ? Float.POSITIVE_INFINITY : value / planes;
    }

    /** Gives the pixels that are full in some colour the value of a full one. */
    static void fill(float[] pixels, float full) {
        for (int i = 0; i < pixels.length; i++) {
            if (pixels[i] == Float.POSITIVE_INFINITY) {
                pixels[i] = full;
            }
        }
    }
}
