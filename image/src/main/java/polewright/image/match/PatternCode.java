package polewright.image.match;

/**
 * The shape of a star and three others, independent of size, position and rotation.
 *
 * <p>In the tangent plane at the star, the others are complex numbers p₁, p₂, p₃ with the star at 0. Dividing by the
 * farthest of them puts that one at 1; the other two, the one of smaller real part first, are the code: four numbers
 * between −1 and 1. A mirrored picture gives the conjugates.
 *
 * <p>Both the order of the two and the choice of the farthest can be close calls; a search for a picture's pattern must
 * then try both.
 */
final class PatternCode {
    /** Numbers in a code. */
    static final int LENGTH = 4;

    private PatternCode() {}

    /**
     * The code of one choice of farthest and order.
     *
     * @param fx the farthest, real part; then {@code fy}; then the first and the second of the others
     * @param mirrored whether to use conjugates
     * @param into receives the four numbers, from {@code at}
     */
    static void write(
            double fx, double fy, double ax, double ay, double bx, double by, boolean mirrored, float[] into, int at) {
        double norm = 1 / (fx * fx + fy * fy);
        double sign = mirrored ? -1 : 1;
        into[at] = (float) ((ax * fx + ay * fy) * norm);
        into[at + 1] = (float) (sign * (ay * fx - ax * fy) * norm);
        into[at + 2] = (float) ((bx * fx + by * fy) * norm);
        into[at + 3] = (float) (sign * (by * fx - bx * fy) * norm);
    }

    /** Exchanges the two stars of a code if the one of larger real part comes first; returns whether it did. */
    static boolean order(float[] code, int at) {
        if (code[at] <= code[at + 2]) {
            return false;
        }
        exchange(code, at);
        return true;
    }

    static void exchange(float[] code, int at) {
        float x = code[at];
        float y = code[at + 1];
        code[at] = code[at + 2];
        code[at + 1] = code[at + 3];
        code[at + 2] = x;
        code[at + 3] = y;
    }
}
