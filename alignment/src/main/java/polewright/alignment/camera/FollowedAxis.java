package polewright.alignment.camera;

import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import polewright.mount.AxisEstimate;
import polewright.mount.Tangents;
import polewright.sky.attitude.CameraAttitude;

/**
 * The axis before, its direction in camera axes and the axis now, adjusted together to the earlier frames, the new
 * frame and, if consistent, the drive's rotation since the last of the earlier frames.
 *
 * <p>With e the errors of the frames, the rows are Cᵢᵀ a₀ = b + eᵢ × b, Cᵀ a₁ = b + e × b, and, for the rotation ρ
 * about the axis from the last frame r to now, ρ − ρ_measured = (e − e_r)·b + tan h₁ δ₁ − tan h₀ δ₀. Here δ are shifts
 * of the two axes to the right and h their altitudes: moving an axis in azimuth also rotates the mount about the axis.
 * If the earlier frames do not close, a₀ and b are as uncertain as {@link FrameExplanations} gives, and those rows
 * replace the frames' rows.
 *
 * @param estimate the axis now
 * @param addedChiSquared contribution of the drive's row; 0 without
 */
record FollowedAxis(AxisEstimate estimate, double addedChiSquared) {
    private static final double ARCSEC = Math.PI / (180 * 3600);
    private static final int UNKNOWNS = 6;
    private static final int NOW = 4;
    private static final int BEFORE = 4;

    static FollowedAxis of(
            AxisFromFrames found, CameraAttitude now, Vector3D start, Optional<ScrewProgress.DriveFigure> drive) {
        List<CameraAttitude> frames = found.frames();
        Vector3D before = found.axis().elevatedEnd();
        Vector3D inCamera = found.inCamera();
        Tangents atBefore = Tangents.rightAndUp(before);
        Tangents atNow = Tangents.rightAndUp(start);
        Tangents atCamera = Tangents.towardBoresightAndAcross(inCamera);
        boolean closes = found.closes();
        int nowRow = closes ? 2 * frames.size() : BEFORE;
        int rows = nowRow + 2 + (drive.isPresent() ? 1 : 0);
        RealMatrix design = MatrixUtils.createRealMatrix(rows, UNKNOWNS);
        RealVector measured = MatrixUtils.createRealVector(rows);
        RealMatrix noise = MatrixUtils.createRealMatrix(rows, rows);
        if (closes) {
            for (int i = 0; i < frames.size(); i++) {
                addFrame(design, measured, noise, 2 * i, frames.get(i), before, inCamera, atBefore, atCamera, 0);
            }
        } else {
            // The frames alone constrain it too little: the combined estimate replaces them.
            design.setSubMatrix(MatrixUtils.createRealIdentityMatrix(BEFORE).getData(), 0, 0);
            noise.setSubMatrix(found.mixture().covariance().getData(), 0, 0);
        }
        addFrame(design, measured, noise, nowRow, now, start, inCamera, atNow, atCamera, NOW);
        if (drive.isPresent()) {
            int row = nowRow + 2;
            CameraAttitude last = frames.get(frames.size() - 1);
            measured.setEntry(row, drive.get().missingArcsec());
            design.setEntry(row, 0, -tanAltitude(before));
            design.setEntry(row, NOW, tanAltitude(start));
            double sigma = drive.get().sigmaArcsec();
            noise.setEntry(
                    row,
                    row,
                    sigma * sigma
                            + last.covariance().varianceAboutArcsec2(inCamera)
                            + now.covariance().varianceAboutArcsec2(inCamera));
            // The noise of a frame's own rows is (−e·second, e·first), that of the drive's row (e − e_r)·b.
            if (closes) {
                correlate(noise, row, nowRow - 2, last, inCamera, atCamera, 1);
            }
            correlate(noise, row, nowRow, now, inCamera, atCamera, -1);
        }
        WeightedFit fit = WeightedFit.of(design, measured, noise);
        RealVector x = fit.solution();
        RealMatrix covariance = fit.covariance().getSubMatrix(NOW, NOW + 1, NOW, NOW + 1);
        return new FollowedAxis(
                AxisEstimate.of(atNow.moved(start, x.getEntry(NOW) * ARCSEC, x.getEntry(NOW + 1) * ARCSEC), covariance),
                fit.chiSquared() - (closes ? found.chiSquared() : 0));
    }

    private static void addFrame(
            RealMatrix design,
            RealVector measured,
            RealMatrix noise,
            int row,
            CameraAttitude frame,
            Vector3D axis,
            Vector3D inCamera,
            Tangents atAxis,
            Tangents atCamera,
            int column) {
        Vector2D miss = atCamera.components(AxisFit.inCamera(frame, axis).subtract(inCamera));
        Vector2D right = atCamera.components(AxisFit.inCamera(frame, atAxis.first()));
        Vector2D up = atCamera.components(AxisFit.inCamera(frame, atAxis.second()));
        measured.setEntry(row, -miss.getX() / ARCSEC);
        measured.setEntry(row + 1, -miss.getY() / ARCSEC);
        design.setEntry(row, column, right.getX());
        design.setEntry(row, column + 1, up.getX());
        design.setEntry(row + 1, column, right.getY());
        design.setEntry(row + 1, column + 1, up.getY());
        design.setEntry(row, 2, -1);
        design.setEntry(row + 1, 3, -1);
        noise.setSubMatrix(AxisFit.noiseOf(frame, atCamera).getData(), row, row);
    }

    private static void correlate(
            RealMatrix noise,
            int row,
            int frameRow,
            CameraAttitude frame,
            Vector3D inCamera,
            Tangents atCamera,
            int sign) {
        double second = sign * frame.covariance().covarianceArcsec2(atCamera.second(), inCamera);
        double first = -sign * frame.covariance().covarianceArcsec2(atCamera.first(), inCamera);
        noise.setEntry(row, frameRow, second);
        noise.setEntry(frameRow, row, second);
        noise.setEntry(row, frameRow + 1, first);
        noise.setEntry(frameRow + 1, row, first);
    }

    private static double tanAltitude(Vector3D enu) {
        return enu.getZ() / Math.hypot(enu.getX(), enu.getY());
    }
}
