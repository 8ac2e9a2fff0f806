package polewright.simulation;

import java.time.Duration;
import java.time.Instant;
import java.util.random.RandomGenerator;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.RotationOrder;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.alignment.sighting.BodyBearing;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.DriftDirection;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.ReadLength;
import polewright.alignment.sighting.ReticleNorth;
import polewright.alignment.sighting.StarDrift;
import polewright.alignment.sighting.StillPoint;
import polewright.mount.AxisPointing;
import polewright.mount.rig.Camera;
import polewright.mount.rig.ClockDirection;
import polewright.mount.rig.Optic;
import polewright.simulation.camera.CameraPath;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.attitude.RotationCovariance;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.SkyBody;
import polewright.sky.magnetic.MagneticModel;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/**
 * An observer who reads compass, scale, field and drift at a {@link HiddenWedge}, with errors as large as stated.
 *
 * @param weather the air on the line of sight
 * @param random source of the errors
 */
public record SimulatedObserver(Weather weather, RandomGenerator random) {
    public CompassBearing compass(HiddenWedge wedge, Instant at, Angle sigma) {
        Angle declination = MagneticModel.wmm2025().field(wedge.site(), at).declination();
        Angle read = wedge.pointing().azimuth().minus(declination).plus(error(sigma));
        return new CompassBearing(at, read.wrappedPositive(), declination, sigma);
    }

    public LevelledScale scale(HiddenWedge wedge, Instant at, Angle sigma) {
        return new LevelledScale(at, wedge.pointing().altitude().plus(error(sigma)), sigma);
    }

    /** The angle at the tripod from the shadow of a plumb line, or from the direction of a body, to the axis. */
    public BodyBearing bearing(HiddenWedge wedge, Instant at, SkyBody body, BodyBearing.Line line, Angle sigma) {
        Vector3D seen = seen(wedge.site(), body, at);
        Vector3D from = line == BodyBearing.Line.SHADOW ? seen.negate() : seen;
        Vector3D axis = wedge.axis();
        // Clockwise as seen from above: the cross product of the horizontal parts points down.
        double clockwise = Math.atan2(
                from.getY() * axis.getX() - from.getX() * axis.getY(),
                from.getX() * axis.getX() + from.getY() * axis.getY());
        return new BodyBearing(at, body, line, new Angle(clockwise).plus(error(sigma)), sigma);
    }

    /** The position of a star in the field of {@code optic} relative to the centre of rotation. */
    public StillPoint stillPoint(HiddenWedge wedge, Instant at, SkyBody star, Optic optic) {
        Angle sigma = optic.field().times(StillPoint.USUAL_SIGMA_OF_FIELD);
        Vector3D seen = seen(wedge.site(), star, at);
        // Rotate the axis within its meridian plane onto north on the horizon; then east is right and up is up.
        AxisPointing axis = wedge.pointing();
        Rotation toNorth = new Rotation(Vector3D.PLUS_K, axis.azimuth().radians(), RotationConvention.VECTOR_OPERATOR);
        Rotation toHorizon =
                new Rotation(Vector3D.PLUS_I, -axis.altitude().radians(), RotationConvention.VECTOR_OPERATOR);
        Vector3D levelled = toHorizon.applyTo(toNorth.applyTo(seen));
        double distance = Vector3D.angle(levelled, Vector3D.PLUS_J);
        double direction = Math.atan2(levelled.getX(), levelled.getZ());
        Vector2D onSky = new Vector2D(
                distance * Math.sin(direction) + error(sigma).radians(),
                distance * Math.cos(direction) + error(sigma).radians());
        Vector2D inView = optic.view().fromSky(onSky);
        return new StillPoint(
                at,
                star,
                ReadLength.ofField(inView.getNorm() / optic.field().radians(), optic.field()),
                ClockDirection.ofAngle(new Angle(Math.atan2(inView.getX(), inView.getY()))),
                optic.view(),
                sigma);
    }

    /**
     * How far a star drifts while the mount tracks it, along a reticle line that was aligned with the star's trail
     * with the drive off; north or south, in arcseconds.
     */
    public StarDrift drift(HiddenWedge wedge, Instant at, SkyBody star, Duration length, Angle sigma) {
        Site site = wedge.site();
        Vector3D northEnd = wedge.axis().scalarMultiply(site.hemisphereSign());
        Vector3D tube = seen(site, star, at);
        // The sky turns westward, clockwise about the north pole seen from outside, and so must the tube.
        Rotation tracking = new Rotation(
                northEnd,
                -CameraPath.SIDEREAL_RAD_PER_SECOND * length.toMillis() / 1000.0,
                RotationConvention.VECTOR_OPERATOR);
        Vector3D tubeLater = tracking.applyTo(tube);
        Vector3D starLater = seen(site, star, at.plus(length));
        Vector3D pole = new Vector3D(0, site.latitude().cos(), site.latitude().sin());
        Vector3D line = tracking.applyTo(
                pole.subtract(tube.scalarMultiply(pole.dotProduct(tube))).normalize());
        double northward = Math.atan2(starLater.dotProduct(line), starLater.dotProduct(tubeLater))
                + error(sigma).radians();
        return new StarDrift(
                at,
                length,
                star,
                ReadLength.ofArcseconds(Math.abs(new Angle(northward).arcseconds())),
                new DriftDirection.OnSky(northward >= 0, ReticleNorth.SKY),
                sigma);
    }

    /** The camera's attitude as a frame gives it, matched with the camera's usual accuracy. */
    public CameraAttitude attitude(SimulatedFork fork, Instant at, Camera camera) {
        RotationCovariance covariance = camera.usualCovariance();
        Rotation error = new Rotation(
                RotationOrder.XYZ,
                RotationConvention.VECTOR_OPERATOR,
                error(covariance.centreSigma()).radians(),
                error(covariance.centreSigma()).radians(),
                error(covariance.rollSigma()).radians());
        return CameraAttitude.of(at, fork.cameraToEnu(at).applyTo(error), covariance);
    }

    private Vector3D seen(Site site, SkyBody body, Instant at) {
        ObservingMoment moment = ObservingMoment.of(site, SkyTime.of(at), weather);
        return moment.refracted(Ephemeris.apparent(body, moment)).enu();
    }

    private Angle error(Angle sigma) {
        return sigma.times(random.nextGaussian());
    }
}
