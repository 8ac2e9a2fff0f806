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
 * What screws and right ascension together would have done between two frames of one camera, declination untouched.
 *
 * @param now where the axis points by the later frame
 * @param azimuthMoved how far the azimuth screw took it, azimuth growing positive
 * @param altitudeMoved how far the altitude screw raised it
 * @param turnedWest how far right ascension turned once the screws' own turns are undone
 */
record ScrewMove(AxisPointing now, Angle azimuthMoved, Angle altitudeMoved, Angle turnedWest) {
    /**
     * Between two frames.
     *
     * @param was where the axis pointed at the earlier
     */
    static ScrewMove between(AxisFromFrames found, AxisPointing was, CameraAttitude before, CameraAttitude after) {
        AxisPointing now = new AxisPointing(after.cameraToEnu().applyTo(found.inCamera()));
        Angle azimuthMoved = now.azimuth().minus(was.azimuth()).wrappedSigned();
        Angle altitudeMoved = now.altitude().minus(was.altitude());
        Vector3D hinge = Tangents.rightAndUp(was.elevatedEnd()).first();
        // Azimuth grows clockwise from above, a negative turn about the vertical; raising turns by the right-hand rule.
        Rotation swung = new Rotation(Vector3D.PLUS_K, -azimuthMoved.radians(), RotationConvention.VECTOR_OPERATOR);
        Rotation raised = new Rotation(hinge, altitudeMoved.radians(), RotationConvention.VECTOR_OPERATOR);
        Rotation screws = swung.applyTo(raised);
        Rotation whole = after.cameraToEnu().applyTo(before.cameraToEnu().revert());
        Angle west = SiderealTurn.westward(screws.applyInverseTo(whole), was.northernEnd(found.site()));
        return new ScrewMove(now, azimuthMoved, altitudeMoved, west);
    }

    /** What was turned westward beyond what the drive did; of an untold drive, beyond the nearer of following and not. */
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
     * What a lean of the base lets the screws turn the mount about its axis beyond what level ones would, to first order:
     * a lean λ toward the pole adds Δaz λ / cos h, one sideways Δh λ tan h / cos h, h being the axis's altitude.
     */
    double leanArcsec(Angle levelSigma) {
        Angle altitude = now.altitude();
        double tangent = altitude.sin() / altitude.cos();
        double moved = Math.hypot(azimuthMoved.radians(), altitudeMoved.radians() * tangent);
        return levelSigma.times(moved).arcseconds() / altitude.cos();
    }
}
