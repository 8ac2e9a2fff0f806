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
 * A fork with a camera on its tube, on a wedge: a chain of exact rotations.
 * <pre>
 *   camera to ENU = sag · base · turn about the axis (hour angle) · lean of the declination axis
 *                       · turn about the declination axis · cone · camera in the tube (roll)
 * </pre>
 *
 * <p>The mount's own frame is x toward the upper culmination of its equator, y east, z along the northern end of its
 * axis. Every motion in right ascension is a rotation about that end and nothing else, except for the sag.
 *
 * @param northernEnd ENU unit vector of the axis, its end toward the north celestial pole
 * @param baseVertical ENU unit vector of the base's own vertical; with the axis it defines the mount's meridian
 * @param tube how the camera is mounted on the fork
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

    /** A fork on this wedge, with the tube at the pole and the drive off. */
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

    /** The same fork after its wedge was turned, clamped or moved: its own axes have not turned. */
    public SimulatedFork onWedge(HiddenWedge wedge) {
        return new SimulatedFork(
                wedge.pointing().northernEnd(wedge.site()),
                wedge.azimuthAxis(),
                tube,
                hourAngle,
                declination,
                drive,
                since);
    }

    /** Points the tube by the mount's own circles; the drive carries it from then on. */
    public SimulatedFork pointed(Angle toHourAngle, Angle toDeclination, Instant at) {
        return new SimulatedFork(northernEnd, baseVertical, tube, toHourAngle, toDeclination, drive, at);
    }

    /** Points the tube by the circles to the apparent place of a star; it misses by the tube's misalignments. */
    public SimulatedFork pointed(CatalogueStar star, ObservingMoment moment) {
        RefractedDirection seen = moment.refracted(moment.apparent(star));
        Vector3D mountAxes = base().applyInverseTo(seen.enu());
        return pointed(
                new Angle(Math.atan2(-mountAxes.getY(), mountAxes.getX())),
                new Angle(Math.atan2(mountAxes.getZ(), Math.hypot(mountAxes.getX(), mountAxes.getY()))),
                moment.time().utc());
    }

    /** Turned about the right-ascension axis by hand, westward; the drive continues as before. */
    public SimulatedFork turned(Angle westward) {
        return new SimulatedFork(northernEnd, baseVertical, tube, hourAngle.plus(westward), declination, drive, since);
    }

    /** Changes the drive at an instant; until then the old one applies. */
    public SimulatedFork driven(Drive newDrive, Instant from) {
        return new SimulatedFork(northernEnd, baseVertical, tube, hourAngleAt(from), declination, newDrive, from);
    }

    /** Hour angle of the tube by the mount's own circle. */
    public Angle hourAngleAt(Instant at) {
        return hourAngle.plus(drive.driven(since, at));
    }

    /** The camera's attitude at an instant: the rotation from camera axes to ENU, to be applied to vectors. */
    public Rotation cameraToEnu(Instant at) {
        Rotation withoutSag = base().applyTo(
                        about(Vector3D.PLUS_K, hourAngleAt(at).negated()))
                .applyTo(about(Vector3D.PLUS_I, tube.declinationAxisTilt()))
                .applyTo(about(Vector3D.PLUS_J, declination.negated()))
                .applyTo(about(Vector3D.PLUS_K, tube.cone()))
                .applyTo(CAMERA_IN_TUBE)
                // Up turns from north toward east, which is left: anticlockwise as seen from behind.
                .applyTo(about(Vector3D.PLUS_K, tube.cameraRoll().negated()));
        return sagged(withoutSag);
    }

    /** The camera's attitude and motion about the middle of an exposure. */
    public CameraPath during(Instant middle) {
        return secondsFromMiddle -> cameraToEnu(middle.plusNanos(Math.round(secondsFromMiddle * 1e9)));
    }

    public AxisPointing axis() {
        return new AxisPointing(northernEnd.getZ() < 0 ? northernEnd.negate() : northernEnd);
    }

    private Rotation base() {
        // East is perpendicular to the plane of axis and vertical.
        Vector3D east = northernEnd.crossProduct(baseVertical).normalize();
        return new Rotation(Vector3D.PLUS_J, Vector3D.PLUS_K, east, northernEnd);
    }

    private Rotation sagged(Rotation withoutSag) {
        if (tube.sag().radians() == 0) {
            return withoutSag;
        }
        Vector3D front = withoutSag.applyTo(Vector3D.PLUS_K);
        // Its length is the cosine of the altitude: the lever arm of gravity.
        Vector3D lever = front.crossProduct(Vector3D.MINUS_K);
        double angle = tube.sag().radians() * lever.getNorm();
        return lever.getNorm() < 1e-12
                ? withoutSag
                : new Rotation(lever, angle, RotationConvention.VECTOR_OPERATOR).applyTo(withoutSag);
    }

    private static Rotation about(Vector3D axis, Angle angle) {
        return new Rotation(axis, angle.radians(), RotationConvention.VECTOR_OPERATOR);
    }
}
