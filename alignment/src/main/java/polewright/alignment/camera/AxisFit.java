package polewright.alignment.camera;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import polewright.mount.Tangents;
import polewright.sky.attitude.CameraAttitude;

/**
 * The axis a in ENU and the same axis b in camera axes that best fit all frames: Cᵢᵀ a = b + eᵢ × b, by generalised
 * least squares over the two components of each frame perpendicular to b. The rotation of the mount at each frame is
 * not needed: a rotation about a leaves Cᵀ a unchanged.
 *
 * <p>In camera axes, toward the boresight and across, at a distance p of the boresight from the axis, the two
 * components have variances σ_c² and σ_c² cos²p + σ_r² sin²p (σ_c of the centre, σ_r of the roll). The full 3×3
 * covariance of each frame is propagated here.
 *
 * @param axis a, elevated end, ENU
 * @param inCamera b
 * @param covariance of small shifts of a (right, up) and b (toward the boresight, across), arcsec²
 * @param residuals Cᵢᵀ a − b along b's tangents, arcsec
 * @param chiSquared of the residuals
 */
record AxisFit(Vector3D axis, Vector3D inCamera, RealMatrix covariance, List<Vector2D> residuals, double chiSquared) {
    private static final int MOST_ROUNDS = 20;
    private static final double SETTLED_ARCSEC = 1e-7;
    private static final double ARCSEC = Math.PI / (180 * 3600);

    /** The best fit, starting from an approximate axis. */
    static AxisFit of(List<CameraAttitude> frames, Vector3D start) {
        Vector3D axis = start;
        Vector3D inCamera = mean(frames, axis);
        WeightedFit fit = null;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            Tangents atAxis = Tangents.rightAndUp(axis);
            Tangents atCamera = Tangents.towardBoresightAndAcross(inCamera);
            WeightedFit next = round(frames, axis, inCamera, atAxis, atCamera);
            RealVector x = next.solution();
            axis = atAxis.moved(axis, x.getEntry(0) * ARCSEC, x.getEntry(1) * ARCSEC);
            inCamera = atCamera.moved(inCamera, x.getEntry(2) * ARCSEC, x.getEntry(3) * ARCSEC);
            fit = next;
            if (x.getLInfNorm() < SETTLED_ARCSEC) {
                break;
            }
        }
        if (fit == null) {
            throw new IllegalStateException("no round was made");
        }
        return new AxisFit(axis, inCamera, fit.covariance(), residuals(frames, axis, inCamera), fit.chiSquared());
    }

    private static WeightedFit round(
            List<CameraAttitude> frames, Vector3D axis, Vector3D inCamera, Tangents atAxis, Tangents atCamera) {
        int n = frames.size();
        RealMatrix design = MatrixUtils.createRealMatrix(2 * n, 4);
        RealVector measured = MatrixUtils.createRealVector(2 * n);
        RealMatrix noise = MatrixUtils.createRealMatrix(2 * n, 2 * n);
        for (int i = 0; i < n; i++) {
            CameraAttitude frame = frames.get(i);
            Vector2D miss = atCamera.components(inCamera(frame, axis).subtract(inCamera));
            Vector2D right = atCamera.components(inCamera(frame, atAxis.first()));
            Vector2D up = atCamera.components(inCamera(frame, atAxis.second()));
            measured.setEntry(2 * i, -miss.getX() / ARCSEC);
            measured.setEntry(2 * i + 1, -miss.getY() / ARCSEC);
            design.setRow(2 * i, new double[] {right.getX(), up.getX(), -1, 0});
            design.setRow(2 * i + 1, new double[] {right.getY(), up.getY(), 0, -1});
            noise.setSubMatrix(noiseOf(frame, atCamera).getData(), 2 * i, 2 * i);
        }
        return WeightedFit.of(design, measured, noise);
    }

    /** Covariance of e × b along the tangents at b: (e·second, −e·first). */
    static RealMatrix noiseOf(CameraAttitude frame, Tangents atCamera) {
        double toward = frame.covariance().varianceAboutArcsec2(atCamera.second());
        double across = frame.covariance().varianceAboutArcsec2(atCamera.first());
        double both = -frame.covariance().covarianceArcsec2(atCamera.first(), atCamera.second());
        RealMatrix noise = MatrixUtils.createRealMatrix(2, 2);
        noise.setRow(0, new double[] {toward, both});
        noise.setRow(1, new double[] {both, across});
        return noise;
    }

    private static List<Vector2D> residuals(List<CameraAttitude> frames, Vector3D axis, Vector3D inCamera) {
        Tangents atCamera = Tangents.towardBoresightAndAcross(inCamera);
        List<Vector2D> residuals = new ArrayList<>();
        for (CameraAttitude frame : frames) {
            residuals.add(atCamera.components(inCamera(frame, axis).subtract(inCamera))
                    .scalarMultiply(1 / ARCSEC));
        }
        return List.copyOf(residuals);
    }

    private static Vector3D mean(List<CameraAttitude> frames, Vector3D axis) {
        Vector3D sum = Vector3D.ZERO;
        for (CameraAttitude frame : frames) {
            sum = sum.add(inCamera(frame, axis));
        }
        return sum.normalize();
    }

    /** An ENU direction in camera axes. */
    static Vector3D inCamera(CameraAttitude frame, Vector3D enu) {
        return frame.cameraToEnu().applyInverseTo(enu);
    }
}
