package polewright.alignment.camera;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import polewright.mount.Tangents;
import polewright.sky.attitude.CameraAttitude;

/**
 * The axis under one disturbance, with its evidence: the likelihood averaged over all values of the disturbance's
 * parameters (D. J. C. MacKay, <em>Information Theory, Inference, and Learning Algorithms</em>, ch. 28). A flexible
 * disturbance that could explain any frames is penalised for it. Gaussian around the best fit.
 *
 * @param axis a after the last frame, ENU
 * @param inCamera b before the disturbance
 * @param covariance of small shifts of a (right, up) and b (toward the boresight, across), arcsec²
 * @param figures the disturbance's own parameters, arcsec
 * @param logEvidence up to a constant common to all disturbances of the same frames
 */
record DisturbedFit(Vector3D axis, Vector3D inCamera, RealMatrix covariance, RealVector figures, double logEvidence) {
    private static final int AXIS_FIGURES = 4;
    private static final int MOST_ROUNDS = 10;
    private static final double SETTLED_ARCSEC = 1e-3;
    private static final double ARCSEC = Math.PI / (180 * 3600);
    private static final double SLOPE_STEP_ARCSEC = 1;
    // Small enough to be ordinary, large enough to keep a sharp frame from dominating the fit while it is still far
    // off.
    private static final double FLEXURE_WHILE_FITTING_ARCSEC = 3;

    /** Flexure of the mount at each frame, 1 sigma in each direction, and its prior probability. */
    private record Give(double arcsec, double chance) {}

    // A fork flexes by some arcseconds as it turns, some by tens (common practice).
    private static final List<Give> FLEXURES = List.of(new Give(0, 0.5), new Give(3, 0.4), new Give(10, 0.1));

    /** The frames' linearised equations, unweighted. */
    private record Equations(RealMatrix slopes, RealVector misses, Tangents atCamera) {}

    /** The fits for all sizes of the disturbance, from an approximate axis. */
    static List<DisturbedFit> of(
            List<CameraAttitude> frames, DisturbanceModel model, Vector3D start, Vector3D startInCamera) {
        Vector3D axis = start;
        Vector3D inCamera = startInCamera;
        double[] figures = new double[model.figures()];
        double[] widest = model.sizes().get(model.sizes().size() - 1);
        for (int round = 0; round < MOST_ROUNDS; round++) {
            Equations about = equations(frames, model, axis, inCamera, figures);
            Weighted step = Weighted.of(frames, about, FLEXURE_WHILE_FITTING_ARCSEC, figures, widest);
            axis = axisMoved(axis, step.solution());
            inCamera = inCameraMoved(inCamera, about, step.solution());
            figures = figuresMoved(figures, step.solution());
            if (step.solution().getLInfNorm() < SETTLED_ARCSEC) {
                break;
            }
        }
        Equations about = equations(frames, model, axis, inCamera, figures);
        List<DisturbedFit> fits = new ArrayList<>();
        for (Give give : FLEXURES) {
            for (double[] sizes : model.sizes()) {
                Weighted fit = Weighted.of(frames, about, give.arcsec(), figures, sizes);
                RealVector x = fit.solution();
                fits.add(new DisturbedFit(
                        axisMoved(axis, x),
                        inCameraMoved(inCamera, about, x),
                        fit.covariance().getSubMatrix(0, AXIS_FIGURES - 1, 0, AXIS_FIGURES - 1),
                        MatrixUtils.createRealVector(figuresMoved(figures, x)),
                        fit.logEvidence()
                                + Math.log(give.chance() / model.sizes().size())));
            }
        }
        return fits;
    }

    /** The size of the disturbance, combined over its components along and across; arcsec. */
    double size() {
        int along = Math.min(2, figures.getDimension());
        return along == 0 ? 0 : figures.getSubVector(0, along).getNorm();
    }

    private static Vector3D axisMoved(Vector3D axis, RealVector x) {
        return Tangents.rightAndUp(axis).moved(axis, x.getEntry(0) * ARCSEC, x.getEntry(1) * ARCSEC);
    }

    private static Vector3D inCameraMoved(Vector3D inCamera, Equations about, RealVector x) {
        return about.atCamera().moved(inCamera, x.getEntry(2) * ARCSEC, x.getEntry(3) * ARCSEC);
    }

    private static double[] figuresMoved(double[] figures, RealVector x) {
        double[] moved = figures.clone();
        for (int k = 0; k < moved.length; k++) {
            moved[k] += x.getEntry(AXIS_FIGURES + k);
        }
        return moved;
    }

    private static Equations equations(
            List<CameraAttitude> frames, DisturbanceModel model, Vector3D axis, Vector3D inCamera, double[] figures) {
        Tangents atCamera = Tangents.towardBoresightAndAcross(inCamera);
        int unknowns = AXIS_FIGURES + figures.length;
        double[][] slopes = new double[2 * frames.size()][unknowns];
        double[] misses = new double[2 * frames.size()];
        for (int i = 0; i < frames.size(); i++) {
            Vector2D miss = model.miss(i, frames.get(i), axis, inCamera, figures, atCamera);
            misses[2 * i] = miss.getX();
            misses[2 * i + 1] = miss.getY();
            for (int k = 0; k < unknowns; k++) {
                Vector2D more =
                        shifted(i, frames.get(i), model, axis, inCamera, figures, atCamera, k, SLOPE_STEP_ARCSEC);
                Vector2D less =
                        shifted(i, frames.get(i), model, axis, inCamera, figures, atCamera, k, -SLOPE_STEP_ARCSEC);
                Vector2D slope = more.subtract(less).scalarMultiply(0.5 / SLOPE_STEP_ARCSEC);
                slopes[2 * i][k] = slope.getX();
                slopes[2 * i + 1][k] = slope.getY();
            }
        }
        return new Equations(MatrixUtils.createRealMatrix(slopes), MatrixUtils.createRealVector(misses), atCamera);
    }

    private static Vector2D shifted(
            int index,
            CameraAttitude frame,
            DisturbanceModel model,
            Vector3D axis,
            Vector3D inCamera,
            double[] figures,
            Tangents atCamera,
            int which,
            double byArcsec) {
        double by = byArcsec * ARCSEC;
        return switch (which) {
            case 0 ->
                model.miss(index, frame, Tangents.rightAndUp(axis).moved(axis, by, 0), inCamera, figures, atCamera);
            case 1 ->
                model.miss(index, frame, Tangents.rightAndUp(axis).moved(axis, 0, by), inCamera, figures, atCamera);
            case 2 -> model.miss(index, frame, axis, atCamera.moved(inCamera, by, 0), figures, atCamera);
            case 3 -> model.miss(index, frame, axis, atCamera.moved(inCamera, 0, by), figures, atCamera);
            default -> {
                double[] other = figures.clone();
                other[which - AXIS_FIGURES] += byArcsec;
                yield model.miss(index, frame, axis, inCamera, other, atCamera);
            }
        };
    }

    /** Least squares with a prior on the size of the disturbance. */
    private record Weighted(RealVector solution, RealMatrix covariance, double logEvidence) {
        static Weighted of(
                List<CameraAttitude> frames, Equations about, double giveArcsec, double[] figures, double[] sizes) {
            int unknowns = AXIS_FIGURES + figures.length;
            int rows = 2 * frames.size();
            RealMatrix design = MatrixUtils.createRealMatrix(rows + figures.length, unknowns);
            RealVector measured = MatrixUtils.createRealVector(rows + figures.length);
            double logRoots = 0;
            for (int i = 0; i < frames.size(); i++) {
                RealMatrix noise = AxisFit.noiseOf(frames.get(i), about.atCamera());
                double first = Math.sqrt(noise.getEntry(0, 0) + giveArcsec * giveArcsec);
                double cross = noise.getEntry(0, 1) / first;
                double second = Math.sqrt(noise.getEntry(1, 1) + giveArcsec * giveArcsec - cross * cross);
                logRoots += Math.log(first) + Math.log(second);
                for (int k = 0; k < unknowns; k++) {
                    double a = about.slopes().getEntry(2 * i, k) / first;
                    design.setEntry(2 * i, k, a);
                    design.setEntry(2 * i + 1, k, (about.slopes().getEntry(2 * i + 1, k) - cross * a) / second);
                }
                double a = -about.misses().getEntry(2 * i) / first;
                measured.setEntry(2 * i, a);
                measured.setEntry(2 * i + 1, (-about.misses().getEntry(2 * i + 1) - cross * a) / second);
            }
            for (int k = 0; k < figures.length; k++) {
                design.setEntry(rows + k, AXIS_FIGURES + k, 1 / sizes[k]);
                measured.setEntry(rows + k, -figures[k] / sizes[k]);
                logRoots += Math.log(sizes[k]);
            }
            WeightedFit fit = WeightedFit.ofUnitNoise(design, measured);
            double logInformation = -logDeterminant(fit.covariance());
            return new Weighted(
                    fit.solution(), fit.covariance(), -0.5 * (fit.chiSquared() + logInformation) - logRoots);
        }

        private static double logDeterminant(RealMatrix covariance) {
            RealMatrix root = new CholeskyDecomposition(symmetric(covariance), 1e-6, 0).getL();
            double sum = 0;
            for (int k = 0; k < root.getRowDimension(); k++) {
                sum += 2 * Math.log(root.getEntry(k, k));
            }
            return sum;
        }

        private static RealMatrix symmetric(RealMatrix matrix) {
            return matrix.add(matrix.transpose()).scalarMultiply(0.5);
        }
    }
}
