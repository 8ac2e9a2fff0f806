package polewright.simulation.camera;

import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;

/**
 * Lens distortion, the displacement from the pinhole projection: D. C. Brown's model (<i>Photogrammetric
 * Engineering</i> 32, 1966, 444), with lengths in half diagonals of the picture, so that each coefficient is the
 * displacement at the corner.
 *
 * <p>With (u, v) the pinhole position, right and down from the centre, and r² = u² + v²:
 * <pre>
 *   u′ = u (1 + k r²) + 2 p₁ u v + p₂ (r² + 2 u²)
 *   v′ = v (1 + k r²) + p₁ (r² + 2 v²) + 2 p₂ u v
 * </pre>
 * Beyond one and a half half-diagonals from the centre the factors keep their value there, so that nothing folds back
 * into view.
 *
 * @param radial k, negative for barrel distortion; at most 0.14 in absolute value
 * @param tangentialDown p₁, from a lens decentred downward; at most 0.02
 * @param tangentialRight p₂, from a lens decentred to the right; at most 0.02
 */
public record Distortion(double radial, double tangentialDown, double tangentialRight) {
    public static final Distortion NONE = new Distortion(0, 0, 0);

    private static final double FOLD_GUARD = 1.5 * 1.5;
    private static final double MOST_RADIAL = 0.14;
    private static final double MOST_TANGENTIAL = 0.02;
    private static final int ROUNDS = 60;

    public Distortion {
        if (!(Math.abs(radial) <= MOST_RADIAL)) {
            throw new InputRefused(
                    "a radial distortion of " + PlainNumber.asTyped(radial) + " at the corner is beyond "
                            + PlainNumber.asTyped(MOST_RADIAL),
                    "give the shift at the corner over its distance from the centre, -0.05 for a wide lens");
        }
        if (!(Math.abs(tangentialDown) <= MOST_TANGENTIAL && Math.abs(tangentialRight) <= MOST_TANGENTIAL)) {
            throw new InputRefused("a tangential distortion is beyond 0.02 at the corner", "give 0 for a sound lens");
        }
    }

    /** Radial distortion only. */
    public static Distortion radial(double atCorner) {
        return new Distortion(atCorner, 0, 0);
    }

    /** Applies the distortion to (u, v), half diagonals, in place. */
    void apply(double[] uv) {
        double u = uv[0];
        double v = uv[1];
        double r2 = Math.min(u * u + v * v, FOLD_GUARD);
        double factor = 1 + radial * r2;
        uv[0] = u * factor + tangentialU(u, v, r2);
        uv[1] = v * factor + tangentialV(u, v, r2);
    }

    /** Undoes {@link #apply} to 1e-12. */
    void undo(double[] uv) {
        if (equals(NONE)) {
            return;
        }
        double atU = uv[0];
        double atV = uv[1];
        double u = atU;
        double v = atV;
        for (int i = 0; i < ROUNDS; i++) {
            double r2 = Math.min(u * u + v * v, FOLD_GUARD);
            double factor = 1 + radial * r2;
            double nextU = (atU - tangentialU(u, v, r2)) / factor;
            double nextV = (atV - tangentialV(u, v, r2)) / factor;
            double step = Math.abs(nextU - u) + Math.abs(nextV - v);
            u = nextU;
            v = nextV;
            if (step < 1e-13) {
                break;
            }
        }
        uv[0] = u;
        uv[1] = v;
    }

    private double tangentialU(double u, double v, double r2) {
        return 2 * tangentialDown * u * v + tangentialRight * (r2 + 2 * u * u);
    }

    private double tangentialV(double u, double v, double r2) {
        return tangentialDown * (r2 + 2 * v * v) + 2 * tangentialRight * u * v;
    }
}
