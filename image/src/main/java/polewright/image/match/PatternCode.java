package polewright.image.match;

/**
 * The shape of a star and three others, whatever its size, place and turn.
 *
 * <p>In the plane that touches the sphere at the star, the others stand at complex numbers p₁, p₂, p₃ with the star at 0.
 * Dividing by the farthest of them puts that one at 1; the other two, the one of smaller real part first, are the code:
 * four figures between −1 and 1. A mirrored picture gives the conjugates.
 *
 * <p>Which two come first is told by a small margin at times, and so is which one is farthest; whoever looks a picture's
 * pattern up must then look for both.
 */
final class PatternCode {
    /** Figures in a code. */
    static final int LENGTH = 4;

    private PatternCode() {}

    /**
     * The code of one choice of farthest and order.
     *
     * @param fx the farthest, real part; then {@code fy}; then the first and the second of the others
     * @param mirrored whether to take conjugates
     * @param into takes the four figures, from {@code at}
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

    /** Exchanges the two stars of a code if the one of larger real part comes first; tells whether it did. */
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
