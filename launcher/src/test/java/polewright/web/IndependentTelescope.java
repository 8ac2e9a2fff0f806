package polewright.web;

import java.time.Duration;
import java.time.Instant;
import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.mount.AxisOffset;
import polewright.mount.rig.HandTurns;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Orientation;
import polewright.operations.watch.ModelWedge;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;

/**
 * A wedge and an observer with their own formulas: no code under test computes these readings. Only the types of the
 * values passed and the star positions come from the project. Northern hemisphere.
 */
final class IndependentTelescope implements TelescopeByEye {
    // Reading accuracy of a person (common practice): compass 3°, scale 1°, a twentieth of the field, a quarter of a
    // division.
    private static final double COMPASS_SIGMA_DEG = 3;
    private static final double SCALE_SIGMA_DEG = 1;
    private static final double FIELD_SIGMA = 0.05;
    private static final double DRIFT_SIGMA_ARCSEC = 3.75;
    // By a chart, to a tenth of a degree.
    private static final double MAGNETIC_DECLINATION_DEG = -0.9;
    private static final double CLAMPS_SHIFT_ARCMIN = 1;

    private final PlainSky sky;
    private final ModelWedge wedge;
    private final Random random;

    IndependentTelescope(PlainSky sky, ModelWedge wedge, long seed) {
        this.sky = sky;
        this.wedge = wedge;
        this.random = new Random(seed);
    }

    @Override
    public AxisOffset offset() {
        return sky.offset(wedge.axis());
    }

    @Override
    public void turn(HandTurns azimuth, HandTurns altitude) {
        wedge.turn(azimuth.outward(), altitude.outward());
        wedge.turn(azimuth.back(), altitude.back());
    }

    @Override
    public void clamp() {
        wedge.shift(CLAMPS_SHIFT_ARCMIN / 60 * random.nextGaussian(), CLAMPS_SHIFT_ARCMIN / 60 * random.nextGaussian());
    }

    @Override
    public void moveByHand(Angle azimuth, Angle altitude) {
        wedge.shift(
                azimuth.degrees() * (1 + 0.2 * random.nextGaussian()),
                altitude.degrees() * (1 + 0.2 * random.nextGaussian()));
    }

    @Override
    public double compassDeg(Instant at) {
        double azimuth =
                Math.toDegrees(Math.atan2(wedge.axis().getX(), wedge.axis().getY()));
        double read = Math.rint(azimuth - MAGNETIC_DECLINATION_DEG + COMPASS_SIGMA_DEG * random.nextGaussian());
        return (read + 360) % 360;
    }

    @Override
    public double scaleDeg(Instant at) {
        double altitude = Math.toDegrees(Math.asin(wedge.axis().getZ()));
        return Math.rint(2 * (altitude + SCALE_SIGMA_DEG * random.nextGaussian())) / 2;
    }

    @Override
    public double shadowDeg(Instant at) {
        throw new AssertionError("the Sun is down");
    }

    /** Right is to the right of someone looking along the axis; an inverted view reverses both directions. */
    @Override
    public StarInView stillPoint(FixedStar star, Instant at, Optic optic) {
        if (optic.view().orientation() != Orientation.INVERTED) {
            throw new AssertionError("the finder is upside down");
        }
        Vector3D axis = wedge.axis();
        Vector3D seen = sky.seen(star.star(), at);
        Vector3D up = Vector3D.PLUS_K.subtract(axis.scalarMultiply(axis.getZ())).normalize();
        Vector3D right = axis.crossProduct(up);
        double fieldRad = optic.field().radians();
        double away = Math.asin(Math.min(1, axis.crossProduct(seen).getNorm())) / fieldRad;
        if (away > 0.5) {
            throw new AssertionError("the star is not in the finder, " + away + " fields from its middle");
        }
        double fromTop = Math.atan2(seen.dotProduct(right), seen.dotProduct(up));
        double x = -away * Math.sin(fromTop) + FIELD_SIGMA * random.nextGaussian() / Math.sqrt(2);
        double y = -away * Math.cos(fromTop) + FIELD_SIGMA * random.nextGaussian() / Math.sqrt(2);
        double clock = Math.toDegrees(Math.atan2(x, y)) / 30;
        return new StarInView(Math.hypot(x, y), clock <= 0 ? clock + 12 : clock);
    }

    /** Read in divisions, across a line that was set along the star's trail. */
    @Override
    public double northwardArcsec(FixedStar star, Instant from, Duration watched) {
        double read = sky.northwardArcsec(wedge.axis(), star.star(), from, watched)
                + DRIFT_SIGMA_ARCSEC * random.nextGaussian();
        return DRIFT_SIGMA_ARCSEC * Math.rint(read / DRIFT_SIGMA_ARCSEC);
    }
}
