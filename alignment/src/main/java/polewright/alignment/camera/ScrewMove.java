package polewright.alignment.camera;

import java.time.Duration;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.mount.AxisPointing;
import polewright.mount.Tangents;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;

/**
 * The motion of screws and right ascension that explains the change between two frames of one camera, declination
 * untouched.
 *
 * @param now the axis from the later frame
 * @param azimuthMoved movement by the azimuth screw, increasing azimuth positive
 * @param altitudeMoved movement by the altitude screw, upward positive
 * @param turnedWest rotation in right ascension after the rotation caused by the screws is removed
 */
record ScrewMove(AxisPointing now, Angle azimuthMoved, Angle altitudeMoved, Angle turnedWest) {
    /**
     * Between two frames.
     *
     * @param was the axis at the earlier
     */
    static ScrewMove between(AxisFromFrames found, AxisPointing was, CameraAttitude before, CameraAttitude after) {
        AxisPointing now = new AxisPointing(after.cameraToEnu().applyTo(found.inCamera()));
        Angle azimuthMoved = now.azimuth().minus(was.azimuth()).wrappedSigned();
        Angle altitudeMoved = now.altitude().minus(was.altitude());
        Vector3D hinge = Tangents.rightAndUp(was.elevatedEnd()).first();
        // Azimuth increases clockwise from above, a negative rotation about the vertical; raising is right-handed.
        Rotation swung = new Rotation(Vector3D.PLUS_K, -azimuthMoved.radians(), RotationConvention.VECTOR_OPERATOR);
        Rotation raised = new Rotation(hinge, altitudeMoved.radians(), RotationConvention.VECTOR_OPERATOR);
        Rotation screws = swung.applyTo(raised);
        Rotation whole = after.cameraToEnu().applyTo(before.cameraToEnu().revert());
        Angle west = SiderealTurn.westward(screws.applyInverseTo(whole), was.northernEnd(found.site()));
        return new ScrewMove(now, azimuthMoved, altitudeMoved, west);
    }

    /**
     * Westward rotation beyond the drive's; if the drive's state is unknown, beyond the nearer of tracking and stopped.
     */
    double beyondDriveArcsec(Drive drive, Duration since) {
        double beyondTracking =
                turnedWest.minus(SiderealTurn.during(since)).wrappedSigned().arcseconds();
        double beyondStanding = turnedWest.arcseconds();
        return switch (drive) {
            case TRACKING -> beyondTracking;
            case STANDING -> beyondStanding;
            case NOT_TOLD -> Math.abs(beyondTracking) < Math.abs(beyondStanding) ? beyondTracking : beyondStanding;
        };
    }

    /**
     * The additional rotation about the axis that a base out of level allows the screws to cause, to first order: a
     * tilt λ toward the pole adds Δaz λ / cos h, one sideways Δh λ tan h / cos h, where h is the axis's altitude.
     */
    double leanArcsec(Angle levelSigma) {
        Angle altitude = now.altitude();
        double tangent = altitude.sin() / altitude.cos();
        double moved = Math.hypot(azimuthMoved.radians(), altitudeMoved.radians() * tangent);
        return levelSigma.times(moved).arcseconds() / altitude.cos();
    }
}
