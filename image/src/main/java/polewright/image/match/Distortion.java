package polewright.image.match;

/**
 * The distortion of a lens or a tilted detector: added to a pixel's position, it gives the position in a pinhole
 * camera. This is the direction of the open SIP convention (Shupe et al. 2005, ADASS XIV, ASP Conf. 347, 491).
 *
 * <p>Terms i + j of 1 to 3 in (u/h)ⁱ(v/h)ʲ, pixels, with h half the diagonal of the frame. The two first-order terms
 * turn a square into a rhombus or a rectangle; rotation and scale belong to the plate.
 */
public final class Distortion {
    /** Powers of u of the terms of second and third order. */
    static final int[] POWER_U = {2, 1, 0, 3, 2, 1, 0};
    /** Powers of v of the same. */
    static final int[] POWER_V = {0, 1, 2, 0, 1, 2, 3};
    /** The number of terms in each of u and v. */
    public static final int TERMS = POWER_U.length;

    static final Distortion NONE = new Distortion(0, 0, new double[TERMS], new double[TERMS]);

    private final double stretch;
    private final double shear;
    private final double[] inU;
    private final double[] inV;

    /**
     * @param stretch fraction by which u is longer and v shorter
     * @param shear fraction of v added to u, and of u to v
     * @param inU terms of u, pixels
     * @param inV terms of v, pixels
     */
    Distortion(double stretch, double shear, double[] inU, double[] inV) {
        this.stretch = stretch;
        this.shear = shear;
        this.inU = inU;
        this.inV = inV;
    }

    /** Fraction by which u is longer and v shorter. */
    public double stretch() {
        return stretch;
    }

    /** Fraction of v added to u, and of u to v. */
    public double shear() {
        return shear;
    }

    /** The exponent of u in a term of second or third order. */
    public static int powerOfU(int term) {
        return POWER_U[term];
    }

    /** The exponent of v in it. */
    public static int powerOfV(int term) {
        return POWER_V[term];
    }

    /** Contribution of a term to u, pixels. */
    public double termInU(int term) {
        return inU[term];
    }

    /** Contribution of a term to v, pixels. */
    public double termInV(int term) {
        return inV[term];
    }

    /** Whether there are terms of second or third order. */
    public boolean isCurved() {
        for (int term = 0; term < TERMS; term++) {
            if (inU[term] != 0 || inV[term] != 0) {
                return true;
            }
        }
        return false;
    }

    /** The correction to u. */
    double ofU(double u, double v, double h) {
        return stretch * u + shear * v + polynomial(inU, u / h, v / h);
    }

    /** The correction to v. */
    double ofV(double u, double v, double h) {
        return shear * u - stretch * v + polynomial(inV, u / h, v / h);
    }

    private static double polynomial(double[] c, double u, double v) {
        return u * (u * (c[0] + c[3] * u + c[4] * v) + v * (c[1] + c[5] * v)) + v * v * (c[2] + c[6] * v);
    }
}
