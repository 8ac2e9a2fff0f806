package polewright.alignment.fix;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleSupplier;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.alignment.sighting.BodyAltitude;
import polewright.alignment.sighting.BodyBearing;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.DriftDirection;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.ReadLength;
import polewright.alignment.sighting.ReticleNorth;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.SkySetting;
import polewright.alignment.sighting.StarDrift;
import polewright.alignment.sighting.StillPoint;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.rig.ClockDirection;
import polewright.mount.rig.View;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * Simulates readings at a known axis with each sighting's own model. (The models are tested elsewhere, against exact
 * rotations.)
 *
 * @param errorInSigmas drawn for every measurement; 0 for noise-free readings
 */
public record KnownAxis(Site site, AxisPointing axis, DoubleSupplier errorInSigmas) {
    /** At this time the Sun is up at longitude 0 at every latitude below 80°, and not on the meridian. */
    public static final Instant FORENOON = Instant.parse("2026-09-23T09:00:00Z");

    public static final Weather AIR = Weather.standardAt(200);

    /** Not the real magnetic declination of either site, but well away from 0. */
    private static final Angle MAGNETIC = Angle.ofDegrees(9);

    private static final Angle ONE_ARCMINUTE = Angle.ofArcminutes(1);

    public static KnownAxis exactly(Site site, AxisPointing axis) {
        return new KnownAxis(site, axis, () -> 0);
    }

    public static KnownAxis exactly(Site site, AxisOffset offset) {
        return exactly(site, AxisPointing.of(site, offset));
    }

    public KnownAxis at(AxisPointing elsewhere) {
        return new KnownAxis(site, elsewhere, errorInSigmas);
    }

    /** A star with this declination toward the elevated pole. */
    public FixedStar star(double hourAngleDeg, double towardPoleDeg) {
        return SkySetting.starAt(site, SkySetting.EVENING, hourAngleDeg, site.hemisphereSign() * towardPoleDeg);
    }

    public CompassBearing compass(Angle sigma) {
        Angle bearing = axis.azimuth().minus(MAGNETIC).plus(error(sigma));
        return new CompassBearing(SkySetting.EVENING, bearing.wrappedPositive(), MAGNETIC, sigma);
    }

    public LevelledScale scale(Angle sigma) {
        return new LevelledScale(SkySetting.EVENING, axis.altitude().plus(error(sigma)), sigma);
    }

    public BodyBearing shadow(Angle sigma) {
        return bearing(FORENOON, SolarSystemBody.SUN, BodyBearing.Line.SHADOW, sigma);
    }

    public BodyBearing bearing(Angle sigma) {
        return bearing(SkySetting.EVENING, star(-40, 20), BodyBearing.Line.TOWARD_BODY, sigma);
    }

    public BodyAltitude altitude(Angle sigma) {
        FixedStar star = star(-40, 20);
        double asRead = residual(new BodyAltitude(SkySetting.EVENING, star, Angle.ZERO, ONE_ARCMINUTE));
        return new BodyAltitude(
                SkySetting.EVENING, star, ONE_ARCMINUTE.times(asRead).plus(error(sigma)), sigma);
    }

    /** A pole star half a degree from the pole, in a field of this width. */
    public StillPoint stillPoint(View view, Angle field, Angle sigma) {
        FixedStar star = star(30, 89.5);
        StillPoint atNothing = new StillPoint(
                SkySetting.EVENING, star, ReadLength.ofField(0, field), new ClockDirection(12), view, ONE_ARCMINUTE);
        double[] place = atNothing.model(site, AIR).residual(axis.elevatedEnd());
        Vector2D onSky = new Vector2D(
                ONE_ARCMINUTE.times(place[0]).plus(error(sigma)).radians(),
                ONE_ARCMINUTE.times(place[1]).plus(error(sigma)).radians());
        Vector2D inView = view.fromSky(onSky);
        return new StillPoint(
                SkySetting.EVENING,
                star,
                ReadLength.ofField(inView.getNorm() / field.radians(), field),
                ClockDirection.ofAngle(new Angle(Math.atan2(inView.getX(), inView.getY()))),
                view,
                sigma);
    }

    public StarDrift driftOnMeridian(int minutes, Angle sigma) {
        return drift(star(-1, 0), minutes, sigma);
    }

    public StarDrift driftInEast(int minutes, Angle sigma) {
        return drift(star(-70, 10), minutes, sigma);
    }

    public StarDrift driftInWest(int minutes, Angle sigma) {
        return drift(star(68, 10), minutes, sigma);
    }

    public StarDrift drift(FixedStar star, int minutes, Angle sigma) {
        double northwardArcsec = residual(drift(
                        star, minutes, 0, new DriftDirection.OnSky(true, ReticleNorth.MOUNT), Angle.ofArcseconds(1)))
                + error(sigma).arcseconds();
        return drift(
                star,
                minutes,
                Math.abs(northwardArcsec),
                new DriftDirection.OnSky(northwardArcsec >= 0, ReticleNorth.MOUNT),
                sigma);
    }

    /** The same drift entered toward an edge of an upright view, 12 or 6 o'clock: north or south on the meridian. */
    public StarDrift driftTowardTopOrBottom(FixedStar star, int minutes, View view, Angle sigma) {
        StarDrift towardTop = drift(
                star, minutes, 1, new DriftDirection.TowardEdge(new ClockDirection(12), view), Angle.ofArcseconds(1));
        double whole = drift(star, minutes, sigma).drift().angle().arcseconds();
        double atTop = Math.abs(residual(drift(star, minutes, whole, towardTop.direction(), sigma)));
        double atBottom = Math.abs(
                residual(drift(star, minutes, whole, towardTop.direction().reversed(), sigma)));
        DriftDirection entered =
                atTop < atBottom ? towardTop.direction() : towardTop.direction().reversed();
        return drift(star, minutes, whole, entered, sigma);
    }

    public Step.Sighted step(long seq, Sighting sighting) {
        return Step.Sighted.of(seq, sighting, site, AIR);
    }

    private BodyBearing bearing(Instant at, SkyBody body, BodyBearing.Line line, Angle sigma) {
        double asRead = residual(new BodyBearing(at, body, line, Angle.ZERO, ONE_ARCMINUTE));
        Angle clockwise = ONE_ARCMINUTE.times(asRead).plus(error(sigma));
        return new BodyBearing(at, body, line, clockwise, sigma);
    }

    private static StarDrift drift(FixedStar star, int minutes, double arcsec, DriftDirection direction, Angle sigma) {
        return new StarDrift(
                SkySetting.EVENING,
                Duration.ofMinutes(minutes),
                star,
                ReadLength.ofArcseconds(arcsec),
                direction,
                sigma);
    }

    private double residual(Sighting sighting) {
        return sighting.model(site, AIR).residual(axis.elevatedEnd())[0];
    }

    private Angle error(Angle sigma) {
        return sigma.times(errorInSigmas.getAsDouble());
    }

    /** A night around a mistake: two sightings of each direction, numbered from 2. */
    List<Step> consistentNight() {
        List<Sighting> sightings = List.of(
                bearing(BodyBearing.USUAL_SIGMA),
                shadow(BodyBearing.USUAL_SIGMA),
                scale(Angle.ofDegrees(0.5)),
                altitude(BodyAltitude.USUAL_SIGMA),
                driftOnMeridian(5, Angle.ofArcseconds(6)),
                driftInEast(5, Angle.ofArcseconds(6)));
        List<Step> steps = new ArrayList<>();
        sightings.forEach(sighting -> steps.add(step(steps.size() + 2L, sighting)));
        return steps;
    }

    /** The same drift with north and south swapped. */
    static StarDrift reversed(StarDrift read) {
        return new StarDrift(
                read.at(),
                read.length(),
                read.star(),
                read.drift(),
                read.direction().reversed(),
                read.sigma());
    }
}
