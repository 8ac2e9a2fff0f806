package polewright.alignment.camera;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.mount.Tangents;
import polewright.sky.attitude.CameraAttitude;

/**
 * The effect of one disturbance on Cᵢᵀ a = b, with its own parameters in arcseconds: the axis a is the one after the
 * last frame, b its direction in camera axes before anything slipped.
 *
 * @param what the disturbance
 * @param frameCount number of frames
 * @param northPole ENU
 */
record DisturbanceModel(FrameDisturbance what, int frameCount, Vector3D northPole) {
    private static final double ARCSEC = Math.PI / (180 * 3600);
    // A knock may happen at any time in the exposure: the picture shows half of it, 1 sigma 0.3 of it.
    private static final double SHOWN = 0.5;
    private static final double SHOWN_SIGMA = 0.3;
    // A camera that is not square to the tube, or a declination axis that is not square to the polar axis, deflects its
    // motion sideways by this fraction: main camera, guide camera in its rings (common practice: arcminutes, degrees).
    private static final double[] ASKEW = {0.003, 0.03};

    /** Every disturbance possible with this number of frames. */
    static List<DisturbanceModel> all(int frameCount, Vector3D northPole) {
        List<DisturbanceModel> all = new ArrayList<>();
        for (FrameDisturbance.Kind kind : FrameDisturbance.Kind.values()) {
            if (kind == FrameDisturbance.Kind.GIVE || kind == FrameDisturbance.Kind.DROOP) {
                all.add(new DisturbanceModel(new FrameDisturbance(kind, 0), frameCount, northPole));
                continue;
            }
            for (int frame = kind.isBetweenFrames() ? 2 : 1; frame <= frameCount; frame++) {
                all.add(new DisturbanceModel(new FrameDisturbance(kind, frame), frameCount, northPole));
            }
        }
        return all;
    }

    /** The number of free parameters. */
    int figures() {
        return switch (what.kind()) {
            case GIVE -> 0;
            case DROOP, TIME_WRONG -> 1;
            case MOUNT_BUMPED, DECLINATION_MOVED, CAMERA_SLIPPED, FRAME_ASTRAY -> 2;
            case BUMPED_WHILE_EXPOSED -> 4;
        };
    }

    /** Possible sizes, equally likely: 1 sigma of each parameter, arcseconds. */
    List<double[]> sizes() {
        return switch (what.kind()) {
            case GIVE -> List.of(new double[0]);
            case DROOP -> List.of(sigmas(10), sigmas(30), sigmas(100));
            case TIME_WRONG -> List.of(sigmas(30), sigmas(300), sigmas(3600), sigmas(54_000));
            case MOUNT_BUMPED ->
                List.of(sigmas(20, 20), sigmas(60, 60), sigmas(240, 240), sigmas(900, 900), sigmas(3600, 3600));
            case CAMERA_SLIPPED, FRAME_ASTRAY ->
                List.of(sigmas(20, 20), sigmas(90, 90), sigmas(360, 360), sigmas(1800, 1800));
            case DECLINATION_MOVED -> declinationSizes();
            case BUMPED_WHILE_EXPOSED -> List.of(exposed(20), exposed(60), exposed(240), exposed(900), exposed(3600));
        };
    }

    private static List<double[]> declinationSizes() {
        List<double[]> sizes = new ArrayList<>();
        for (double along : new double[] {60, 300, 1800, 7200}) {
            for (double askew : ASKEW) {
                sizes.add(sigmas(along, askew * along));
            }
        }
        return sizes;
    }

    private static double[] exposed(double sigma) {
        return sigmas(sigma, sigma, SHOWN_SIGMA * sigma, SHOWN_SIGMA * sigma);
    }

    private static double[] sigmas(double... sigmas) {
        return sigmas;
    }

    /**
     * The predicted distance of the axis seen by a frame from its undisturbed place in the picture.
     *
     * @param index of the frame, from 0
     * @param axis a, ENU
     * @param inCamera b
     * @param figures of the disturbance, arcsec
     * @param components the two directions in which it is wanted
     */
    Vector2D miss(
            int index, CameraAttitude frame, Vector3D axis, Vector3D inCamera, double[] figures, Tangents components) {
        Vector3D seen = AxisFit.inCamera(frame, axisAt(index, axis, figures));
        return components
                .components(seen.subtract(inCameraAt(index, frame, inCamera, figures)))
                .scalarMultiply(1 / ARCSEC);
    }

    private boolean isAfter(int index) {
        return index + 1 >= what.frame();
    }

    private boolean isIt(int index) {
        return index + 1 == what.frame();
    }

    private Vector3D axisAt(int index, Vector3D axis, double[] figures) {
        return switch (what.kind()) {
            case MOUNT_BUMPED -> isAfter(index) ? axis : before(axis, figures, 1);
            case BUMPED_WHILE_EXPOSED ->
                isIt(index)
                        ? moved(
                                axis,
                                Tangents.rightAndUp(axis),
                                (SHOWN - 1) * figures[0] + figures[2],
                                (SHOWN - 1) * figures[1] + figures[3])
                        : isAfter(index) ? axis : before(axis, figures, 1);
            case TIME_WRONG ->
                isIt(index)
                        ? new Rotation(northPole, figures[0] * ARCSEC, RotationConvention.VECTOR_OPERATOR).applyTo(axis)
                        : axis;
            default -> axis;
        };
    }

    private static Vector3D before(Vector3D axis, double[] figures, double share) {
        return moved(axis, Tangents.rightAndUp(axis), -share * figures[0], -share * figures[1]);
    }

    private Vector3D inCameraAt(int index, CameraAttitude frame, Vector3D inCamera, double[] figures) {
        return switch (what.kind()) {
            case DECLINATION_MOVED, CAMERA_SLIPPED -> isAfter(index) ? slipped(inCamera, figures) : inCamera;
            case FRAME_ASTRAY -> isIt(index) ? slipped(inCamera, figures) : inCamera;
            case DROOP -> sagged(frame, inCamera, figures[0]);
            default -> inCamera;
        };
    }

    private static Vector3D slipped(Vector3D inCamera, double[] figures) {
        return moved(inCamera, Tangents.towardBoresightAndAcross(inCamera), figures[0], figures[1]);
    }

    /**
     * The boresight sags in proportion to the cosine of its altitude, so everything in the picture rises by the same
     * amount.
     */
    private static Vector3D sagged(CameraAttitude frame, Vector3D inCamera, double arcsec) {
        Vector3D down = AxisFit.inCamera(frame, Vector3D.MINUS_K);
        Vector3D about = Vector3D.PLUS_K.crossProduct(down);
        return inCamera.subtract(about.crossProduct(inCamera).scalarMultiply(arcsec * ARCSEC))
                .normalize();
    }

    private static Vector3D moved(Vector3D point, Tangents tangents, double firstArcsec, double secondArcsec) {
        return tangents.moved(point, firstArcsec * ARCSEC, secondArcsec * ARCSEC);
    }
}
