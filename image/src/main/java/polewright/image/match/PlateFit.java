package polewright.image.match;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import polewright.sky.attitude.RotationCovariance;

/**
 * The best-fitting plate for pairs of pixels and directions, by Gauss-Newton with exact rotations.
 *
 * <p>The residual of a star is its undistorted pixel position minus the pinhole projection of its direction: linear in
 * the distortion's terms, so that a few steps are enough.
 *
 * @param plate the best
 * @param normalisedSquare sum of squared residuals, each divided by its variance
 * @param freedom degrees of freedom
 * @param covariance of the rotation, scaled by the scatter of the residuals
 */
record PlateFit(Plate plate, double normalisedSquare, int freedom, RotationCovariance covariance) {
    private static final int MOST_STEPS = 12;
    private static final double LAST_STEP_RAD = 1e-10;
    private static final double ARCSEC_PER_RAD = Math.toDegrees(1) * 3600;
    // The given uncertainties are weighted as if they came from this many residuals.
    private static final double PRIOR_FREEDOM = 8;

    /** Pairs of pixels and directions, as columns. */
    record Pairs(int count, Column x, Column y, Column sigmaPixels, Directions directions) {
        /** The positions of paired stars, with other directions for them. */
        static Pairs of(List<StarPair> pairs, Directions directions) {
            return new Pairs(
                    pairs.size(),
                    i -> pairs.get(i).found().x(),
                    i -> pairs.get(i).found().y(),
                    i -> pairs.get(i).sigmaPixels(),
                    directions);
        }

        /** A subset. */
        Pairs only(int[] members) {
            return new Pairs(
                    members.length,
                    i -> x.at(members[i]),
                    i -> y.at(members[i]),
                    i -> sigmaPixels.at(members[i]),
                    i -> directions.at(members[i]));
        }
    }

    /** A column of numbers. */
    @FunctionalInterface
    interface Column {
        double at(int index);
    }

    /** A column of unit vectors. */
    @FunctionalInterface
    interface Directions {
        Vector3D at(int index);
    }

    /** The factor by which the variance of the residuals exceeds the given uncertainties. */
    double scatter() {
        return (normalisedSquare + PRIOR_FREEDOM) / (freedom + PRIOR_FREEDOM);
    }

    /** Fits a model, starting at a plate; empty if the stars cannot determine it. */
    static Optional<PlateFit> of(Plate start, Pairs pairs, PlateModel model) {
        return of(start, pairs, model, MOST_STEPS);
    }

    /** The same in at most this many steps. */
    static Optional<PlateFit> of(Plate start, Pairs pairs, PlateModel model, int mostSteps) {
        Plate plate = start;
        int n = model.parameters();
        try {
            for (int step = 0; step < mostSteps; step++) {
                Normals normals = Normals.of(plate, pairs, model);
                RealVector change = new CholeskyDecomposition(normals.matrix, 1e-9, 1e-18)
                        .getSolver()
                        .solve(normals.right);
                if (!(change.getNorm() < Double.MAX_VALUE)) {
                    return Optional.empty();
                }
                plate = stepped(plate, change, model);
                double turned = Math.abs(change.getEntry(0)) + Math.abs(change.getEntry(1));
                if (step > 0 && turned + Math.abs(change.getEntry(2)) + Math.abs(change.getEntry(3)) < LAST_STEP_RAD) {
                    break;
                }
            }
            Normals normals = Normals.of(plate, pairs, model);
            int freedom = 2 * pairs.count() - n;
            RealMatrix inverse = new CholeskyDecomposition(normals.matrix, 1e-9, 1e-18)
                    .getSolver()
                    .getInverse();
            PlateFit unscaled = new PlateFit(plate, normals.square, freedom, covariance(inverse, 1));
            return Optional.of(new PlateFit(plate, normals.square, freedom, covariance(inverse, unscaled.scatter())));
        } catch (MathRuntimeException singular) {
            return Optional.empty();
        }
    }

    /**
     * The effect on the plate's rotation of leaving out one part of the stars.
     *
     * @param turn change of the rotation in camera axes, arcseconds
     * @param covariance expected from centring errors alone, arcsec²
     */
    record LeftOut(Vector3D turn, RealMatrix covariance) {}

    /**
     * Leaves out the stars of one part after another; to first order. The normal equations N are sums over stars, so
     * that one pass over them serves all parts. Without part j the change of the rotation has the covariance (N − Nⱼ)⁻¹
     * − N⁻¹, because the whole fit is optimal.
     *
     * @param partOf each pair's part, from 0
     * @return empty if the remaining stars cannot determine the model
     */
    Optional<List<LeftOut>> withoutEachPart(Pairs pairs, int[] partOf, int parts, PlateModel model) {
        List<Normals> each = new ArrayList<>();
        for (int part = 0; part < parts; part++) {
            each.add(Normals.of(plate, pairs.only(members(partOf, part)), model));
        }
        RealMatrix matrix = each.get(0).matrix;
        RealVector right = each.get(0).right;
        for (int part = 1; part < parts; part++) {
            matrix = matrix.add(each.get(part).matrix);
            right = right.add(each.get(part).right);
        }
        double arcsec2 = scatter() * ARCSEC_PER_RAD * ARCSEC_PER_RAD;
        List<LeftOut> turns = new ArrayList<>();
        try {
            RealMatrix whole =
                    new CholeskyDecomposition(matrix, 1e-9, 1e-18).getSolver().getInverse();
            for (Normals left : each) {
                RealMatrix without = new CholeskyDecomposition(matrix.subtract(left.matrix), 1e-9, 1e-18)
                        .getSolver()
                        .getInverse();
                RealVector change = without.operate(right.subtract(left.right));
                Vector3D turn = new Vector3D(change.getEntry(0), change.getEntry(1), change.getEntry(2));
                turns.add(new LeftOut(
                        turn.scalarMultiply(ARCSEC_PER_RAD),
                        without.subtract(whole).getSubMatrix(0, 2, 0, 2).scalarMultiply(arcsec2)));
            }
        } catch (MathRuntimeException singular) {
            return Optional.empty();
        }
        return Optional.of(turns);
    }

    private static int[] members(int[] partOf, int part) {
        return IntStream.range(0, partOf.length).filter(i -> partOf[i] == part).toArray();
    }

    private static RotationCovariance covariance(RealMatrix inverse, double scatter) {
        double k = scatter * ARCSEC_PER_RAD * ARCSEC_PER_RAD;
        return new RotationCovariance(
                k * inverse.getEntry(0, 0),
                k * inverse.getEntry(0, 1),
                k * inverse.getEntry(0, 2),
                k * inverse.getEntry(1, 1),
                k * inverse.getEntry(1, 2),
                k * inverse.getEntry(2, 2));
    }

    private static Plate stepped(Plate plate, RealVector change, PlateModel model) {
        Vector3D right = plate.right();
        Vector3D down = plate.down();
        Vector3D forward = plate.centre();
        // A small rotation e in camera axes: each axis moves by e × axis.
        double ex = change.getEntry(0);
        double ey = change.getEntry(1);
        double ez = change.getEntry(2);
        Vector3D newForward = new Vector3D(ey, right, -ex, down, 1, forward).normalize();
        Vector3D turnedRight = new Vector3D(1, right, ez, down, -ey, forward);
        Vector3D newRight = new Vector3D(1, turnedRight, -turnedRight.dotProduct(newForward), newForward).normalize();
        Vector3D newDown = Vector3D.crossProduct(newForward, newRight);
        double f = plate.pixelsPerRadian() * Math.exp(Math.max(-0.3, Math.min(0.3, change.getEntry(3))));
        return new Plate(
                plate.width(),
                plate.height(),
                plate.mirrored(),
                newRight,
                newDown,
                newForward,
                f,
                distortion(change, model));
    }

    /** The distortion's terms are linear, so the step contains their new values, not their changes. */
    private static Distortion distortion(RealVector change, PlateModel model) {
        double[] inU = new double[Distortion.TERMS];
        double[] inV = new double[Distortion.TERMS];
        switch (model) {
            case PINHOLE -> {
                return Distortion.NONE;
            }
            case RADIAL -> {
                double k = change.getEntry(4);
                inU[3] = k;
                inU[5] = k;
                inV[4] = k;
                inV[6] = k;
                return new Distortion(0, 0, inU, inV);
            }
            case QUADRATIC, CUBIC -> {
                int terms = terms(model);
                for (int term = 0; term < terms; term++) {
                    inU[term] = change.getEntry(6 + term);
                    inV[term] = change.getEntry(6 + terms + term);
                }
                return new Distortion(change.getEntry(4), change.getEntry(5), inU, inV);
            }
        }
        throw new AssertionError(model);
    }

    private static int terms(PlateModel model) {
        return model == PlateModel.QUADRATIC ? 3 : Distortion.TERMS;
    }

    /** Normal equations at one plate; the distortion's terms are solved for completely in each step. */
    private static final class Normals {
        private final RealMatrix matrix;
        private final RealVector right;
        private final double square;

        private Normals(RealMatrix matrix, RealVector right, double square) {
            this.matrix = matrix;
            this.right = right;
            this.square = square;
        }

        static Normals of(Plate plate, Pairs pairs, PlateModel model) {
            int n = model.parameters();
            double[][] matrix = new double[n][n];
            double[] right = new double[n];
            double[] inU = new double[n];
            double[] inV = new double[n];
            double square = 0;
            double f = plate.pixelsPerRadian();
            double h = plate.halfDiagonal();
            for (int i = 0; i < pairs.count(); i++) {
                Vector3D star = pairs.directions().at(i);
                double z = star.dotProduct(plate.centre());
                double xi = star.dotProduct(plate.right()) / z;
                double eta = star.dotProduct(plate.down()) / z;
                double u = plate.u(pairs.x().at(i));
                double v = plate.v(pairs.y().at(i));
                double sigma = pairs.sigmaPixels().at(i);
                double weight = 1 / (sigma * sigma);
                inU[0] = -f * xi * eta;
                inU[1] = f * (1 + xi * xi);
                inU[2] = -f * eta;
                inU[3] = -f * xi;
                inV[0] = -f * (1 + eta * eta);
                inV[1] = f * xi * eta;
                inV[2] = f * xi;
                inV[3] = -f * eta;
                lens(model, u, v, h, inU, inV);
                // Without the distortion, which the step contains completely.
                double residualU = u - f * xi;
                double residualV = v - f * eta;
                add(matrix, right, inU, residualU, weight);
                add(matrix, right, inV, residualV, weight);
                double du = residualU + plate.distortion().ofU(u, v, h);
                double dv = residualV + plate.distortion().ofV(u, v, h);
                square += weight * (du * du + dv * dv);
            }
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < i; j++) {
                    matrix[j][i] = matrix[i][j];
                }
            }
            return new Normals(new Array2DRowRealMatrix(matrix, false), new ArrayRealVector(right, false), square);
        }

        private static void lens(PlateModel model, double u, double v, double h, double[] inU, double[] inV) {
            if (model == PlateModel.PINHOLE) {
                return;
            }
            double a = u / h;
            double b = v / h;
            if (model == PlateModel.RADIAL) {
                inU[4] = a * (a * a + b * b);
                inV[4] = b * (a * a + b * b);
                return;
            }
            inU[4] = u;
            inV[4] = -v;
            inU[5] = v;
            inV[5] = u;
            int terms = terms(model);
            for (int term = 0; term < terms; term++) {
                double value = power(a, Distortion.POWER_U[term]) * power(b, Distortion.POWER_V[term]);
                inU[6 + term] = value;
                inV[6 + terms + term] = value;
            }
        }

        private static double power(double base, int exponent) {
            double result = 1;
            for (int i = 0; i < exponent; i++) {
                result *= base;
            }
            return result;
        }

        private static void add(double[][] matrix, double[] right, double[] row, double residual, double weight) {
            for (int i = 0; i < row.length; i++) {
                double weighted = weight * row[i];
                if (weighted == 0) {
                    continue;
                }
                right[i] -= weighted * residual;
                for (int j = 0; j <= i; j++) {
                    matrix[i][j] += weighted * row[j];
                }
            }
        }
    }
}
