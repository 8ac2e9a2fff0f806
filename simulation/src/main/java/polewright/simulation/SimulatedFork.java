package polewright.simulation;

import java.time.Instant;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.mount.AxisPointing;
import polewright.simulation.camera.CameraPath;
import polewright.sky.angle.Angle;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;

/**
 * A fork with a camera on its tube, standing on a wedge: exact rotations, one inside the other.
 *
 * <pre>
 *   camera to ENU = sag · base · turn about the axis (hour angle) · lean of the declination axis
 *                       · turn about the declination axis · cone · camera in the tube (roll)
 * </pre>
 *
 * <p>The mount's own frame is x toward the upper culmination of its equator, y east, z along the northern end of its
 * axis. Whatever is done about the right-ascension axis is a rotation about that end and nothing else, but for the sag.
 *
 * @param northernEnd ENU unit vector of the axis, its end toward the north celestial pole
 * @param baseVertical ENU unit vector that the base takes for up; the mount's meridian holds it and the axis
 * @param tube how the camera sits on the fork
 * @param hourAngle of the tube by the mount at {@code since}, westward
 * @param declination of the tube by the mount
 * @param drive what moves the axis from then on
 * @param since when the axis was last set
 */
public record SimulatedFork(
        Vector3D northernEnd,
        Vector3D baseVertical,
        TubeOnFork tube,
        Angle hourAngle,
        Angle declination,
        Drive drive,
        Instant since) {
    // At hour angle and declination 0 the tube looks along x; with north (z) up in the picture its right is west (−y).
    private static final Rotation CAMERA_IN_TUBE =
            new Rotation(Vector3D.PLUS_I, Vector3D.PLUS_K, Vector3D.MINUS_J, Vector3D.PLUS_I);

    /** On a wedge as it stands, the tube at the pole, with the drive off. */
    public static SimulatedFork on(HiddenWedge wedge, TubeOnFork tube, Instant since) {
        return new SimulatedFork(
                wedge.pointing().northernEnd(wedge.site()),
                wedge.azimuthAxis(),
                tube,
                Angle.ZERO,
                Angle.QUARTER_TURN.times(wedge.site().hemisphereSign()),
                Drive.STANDING,
                since);
    }

    /** The same fork after its wedge was turned, clamped or moved: nothing has turned about its own axes. */
    public SimulatedFork carriedBy(HiddenWedge wedge) {
        return new SimulatedFork(
                wedge.pointing().northernEnd(wedge.site()),
                wedge.azimuthAxis(),
                tube,
                hourAngle,
                declination,
                drive,
                since);
    }

    /** The tube set by hand to a place by the mount's own circles, and left to its drive from then on. */
    public SimulatedFork pointed(Angle toHourAngle, Angle toDeclination, Instant at) {
        return new SimulatedFork(northernEnd, baseVertical, tube, toHourAngle, toDeclination, drive, at);
    }

    /** The tube set by hand to where a star is seen; off by what the tube is not square. */
    public SimulatedFork pointed(CatalogueStar star, ObservingMoment moment) {
        RefractedDirection seen = moment.refracted(moment.apparent(star));
        Vector3D inMount = base().applyInverseTo(seen.enu());
        return pointed(
                new Angle(Math.atan2(-inMount.getY(), inMount.getX())),
                new Angle(Math.atan2(inMount.getZ(), Math.hypot(inMount.getX(), inMount.getY()))),
                moment.time().utc());
    }

    /** Turned about the right-ascension axis by hand, westward, the drive going on as before. */
    public SimulatedFork turned(Angle westward) {
        return new SimulatedFork(northernEnd, baseVertical, tube, hourAngle.plus(westward), declination, drive, since);
    }

    /** The drive changed at an instant; until then the old one ran. */
    public SimulatedFork driven(Drive by, Instant from) {
        return new SimulatedFork(northernEnd, baseVertical, tube, hourAngleAt(from), declination, by, from);
    }

    /** Hour angle of the tube by the mount's own circle. */
    public Angle hourAngleAt(Instant at) {
        return hourAngle.plus(drive.driven(since, at));
    }

    /** How the camera stands at an instant: the turn from camera axes to ENU, to be applied to vectors. */
    public Rotation cameraToEnu(Instant at) {
        Rotation stiff = base().applyTo(about(Vector3D.PLUS_K, hourAngleAt(at).negated()))
                .applyTo(about(Vector3D.PLUS_I, tube.declinationAxisTilt()))
                .applyTo(about(Vector3D.PLUS_J, declination.negated()))
                .applyTo(about(Vector3D.PLUS_K, tube.cone()))
                .applyTo(CAMERA_IN_TUBE)
                // Up turns from north toward east, which is left: anticlockwise as seen from behind.
                .applyTo(about(Vector3D.PLUS_K, tube.cameraRoll().negated()));
        return drooped(stiff);
    }

    /** How it stands and moves about the middle of an exposure. */
    public CameraPath during(Instant middle) {
        return secondsFromMiddle -> cameraToEnu(middle.plusNanos(Math.round(secondsFromMiddle * 1e9)));
    }

    public AxisPointing axis() {
        return new AxisPointing(northernEnd.getZ() < 0 ? northernEnd.negate() : northernEnd);
    }

    private Rotation base() {
        // East is square to the plane of axis and vertical.
        Vector3D east = northernEnd.crossProduct(baseVertical).normalize();
        return new Rotation(Vector3D.PLUS_J, Vector3D.PLUS_K, east, northernEnd);
    }

    private Rotation drooped(Rotation stiff) {
        if (tube.sag().radians() == 0) {
            return stiff;
        }
        Vector3D front = stiff.applyTo(Vector3D.PLUS_K);
        // As long as the cosine of the altitude: the lever that gravity has.
        Vector3D lever = front.crossProduct(Vector3D.MINUS_K);
        double angle = tube.sag().radians() * lever.getNorm();
        return lever.getNorm() < 1e-12
                ? stiff
                : new Rotation(lever, angle, RotationConvention.VECTOR_OPERATOR).applyTo(stiff);
    }

    private static Rotation about(Vector3D axis, Angle angle) {
        return new Rotation(axis, angle.radians(), RotationConvention.VECTOR_OPERATOR);
    }
}
