package polewright.alignment.camera;

import java.time.Duration;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.mount.AxisPointing;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;

/**
 * Distinguishes a slew in declination from a turn of the screws.
 *
 * <p>A slew in declination moves the field straight toward the axis or away from it, so the unmoved axis keeps its
 * position angle in the picture. Screws explain the same frame only if right ascension also turned by other than the
 * drive's motion. Together these identify a slew, unless the declination axis is level (a field on the meridian) or the
 * field is due east or west: there a slew in declination is indistinguishable from a turn of the altitude or the
 * azimuth screw.
 */
public final class Slew {
    // Rate error and periodic error of a drive, and the roll of two frames with few stars.
    private static final Angle DRIVE_SIGMA = Angle.ofArcminutes(1);
    private static final double SIGMAS = 4;
    // A camera misaligned in its holder by some degrees deflects the motion sideways by as many hundredths.
    private static final double ASKEW = 0.06;
    private static final Angle LEAST = Angle.ofArcminutes(10);

    private Slew() {}

    /**
     * How far declination was moved between two frames, if that is what happened.
     *
     * @param found the axis, from frames before
     * @param before a frame since, or the last of those
     * @param levelSigma how level the base is trusted to be
     */
    public static Optional<Angle> between(
            AxisFromFrames found, CameraAttitude before, CameraAttitude now, Drive drive, Angle levelSigma) {
        AxisPointing was = new AxisPointing(before.cameraToEnu().applyTo(found.inCamera()));
        Vector3D oldAxis = now.cameraToEnu().applyInverseTo(was.elevatedEnd());
        double polarDistance = Vector3D.angle(found.inCamera(), Vector3D.PLUS_K);
        double distanceNow = Vector3D.angle(oldAxis, Vector3D.PLUS_K);
        Angle along = new Angle(distanceNow - polarDistance);
        double turned = Math.atan2(oldAxis.getY(), oldAxis.getX())
                - Math.atan2(found.inCamera().getY(), found.inCamera().getX());
        double across = Math.abs(new Angle(turned).wrappedSigned().radians())
                * Math.min(Math.sin(polarDistance), Math.sin(distanceNow));
        boolean isDeclinationAlone =
                along.abs().compareTo(LEAST) > 0 && across < ASKEW * along.abs().radians();
        return isDeclinationAlone && isBeyondTheDrive(found, was, before, now, drive, levelSigma)
                ? Optional.of(along.abs())
                : Optional.empty();
    }

    private static boolean isBeyondTheDrive(
            AxisFromFrames found,
            AxisPointing was,
            CameraAttitude before,
            CameraAttitude now,
            Drive drive,
            Angle levelSigma) {
        ScrewMove move = ScrewMove.between(found, was, before, now);
        double beyond = move.beyondDriveArcsec(drive, Duration.between(before.at(), now.at()));
        double sigma = Math.hypot(DRIVE_SIGMA.arcseconds(), move.leanArcsec(levelSigma));
        return Math.abs(beyond) > SIGMAS * sigma;
    }
}
