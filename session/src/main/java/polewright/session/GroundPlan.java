package polewright.session;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.View;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStars;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SolarSystem;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.magnetic.CompassTrust;
import polewright.sky.magnetic.MagneticField;
import polewright.sky.magnetic.MagneticModel;
import polewright.sky.place.ApparentPlace;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/**
 * How to set up on bare ground: true north or south by compass, shadow and pole star, and the wedge to the latitude.
 *
 * @param at the time it applies to
 * @param declination magnetic declination, east positive
 * @param declinationSigma the model's own uncertainty, without iron nearby
 * @param compassTrust whether a compass is usable here
 * @param magneticNotes other caveats about the compass
 * @param shadow direction of a plumb line's shadow; empty if the Sun is below 1°
 * @param nextSunTransit the next solar transit, to the second
 * @param poleStarName the pole star of this hemisphere
 * @param poleStarDistance its distance from the true pole of date
 * @param poleStarHourAngle its hour angle, positive west
 */
public record GroundPlan(
        Site site,
        Instant at,
        Angle declination,
        Angle declinationSigma,
        CompassTrust compassTrust,
        List<String> magneticNotes,
        Optional<Shadow> shadow,
        Instant nextSunTransit,
        String poleStarName,
        Angle poleStarDistance,
        Angle poleStarHourAngle) {
    // Below this the shadow is too long and too faint to use.
    private static final Angle LOWEST_SUN = Angle.ofDegrees(1);
    private static final double SUN_DEG_PER_HOUR = 15.0;

    /**
     * A plumb line's shadow.
     *
     * @param at time
     * @param azimuth its direction, true
     * @param axisClockwise from the shadow to the required direction of the axis, clockwise from above
     */
    public record Shadow(Instant at, Angle azimuth, Angle axisClockwise) {
        /** From the shadow to true north, clockwise from above. */
        public Angle northClockwise() {
            return azimuth.negated().wrappedSigned();
        }
    }

    /** With the star near the elevated pole: Polaris, or Sigma Octantis. */
    public static GroundPlan of(ObservingMoment moment) {
        String name = moment.site().isNorthern() ? "Polaris" : "Sigma Octantis";
        return of(moment, new FixedStar(name, NamedStars.bundled().named(name).place()));
    }

    public static GroundPlan of(ObservingMoment moment, FixedStar poleStar) {
        Site site = moment.site();
        Instant at = moment.time().utc();
        MagneticField field = MagneticModel.wmm2025().field(site, at);
        ApparentPlace star = moment.apparent(poleStar.star());
        HourAnglePlace starPlace = moment.hourAngle(star);
        return new GroundPlan(
                site,
                at,
                field.declination(),
                field.declinationUncertainty(),
                field.compassTrust(),
                field.notes(),
                shadow(moment),
                nextSunTransit(site, at),
                poleStar.label(),
                Angle.QUARTER_TURN.minus(star.declination().times(site.hemisphereSign())),
                starPlace.hourAngle());
    }

    /** The compass reading along the axis when it points at the pole. */
    public Angle compassBearing() {
        return site.poleAzimuth().minus(declination).wrappedPositive();
    }

    /** The compass reading along true north. */
    public Angle compassNorth() {
        return declination.negated().wrappedPositive();
    }

    /** The wedge's reading if its scale counts from the zenith. */
    public Angle scaleFromZenith() {
        return Angle.QUARTER_TURN.minus(site.poleAltitude());
    }

    /**
     * Direction of the pole star from the pole in a view, clockwise from the top. For the naked eye facing the pole:
     * right −d sin HA in the north and +d sin HA in the south, up d cos HA in both.
     */
    public Angle poleStarClock(Orientation orientation) {
        Vector2D byEye = new Vector2D(-site.hemisphereSign() * poleStarHourAngle.sin(), poleStarHourAngle.cos());
        Vector2D inView = View.of(orientation).fromSky(byEye);
        return new Angle(Math.atan2(inView.getX(), inView.getY())).wrappedPositive();
    }

    private static Optional<Shadow> shadow(ObservingMoment moment) {
        RefractedDirection sun = moment.refracted(SolarSystem.apparent(SolarSystemBody.SUN, moment));
        if (sun.altitude().compareTo(LOWEST_SUN) < 0) {
            return Optional.empty();
        }
        Angle azimuth = sun.azimuth().plus(Angle.HALF_TURN).wrappedPositive();
        return Optional.of(new Shadow(
                moment.time().utc(),
                azimuth,
                moment.site().poleAzimuth().minus(azimuth).wrappedSigned()));
    }

    private static Instant nextSunTransit(Site site, Instant from) {
        Instant transit = from;
        for (int round = 0; round < 4; round++) {
            ObservingMoment moment = ObservingMoment.of(site, SkyTime.of(transit), Weather.AIRLESS);
            Angle hourAngle = moment.hourAngle(SolarSystem.apparent(SolarSystemBody.SUN, moment))
                    .hourAngle();
            // The first iteration goes to the next transit, the others converge on it.
            Angle ahead = round == 0 ? hourAngle.negated().wrappedPositive() : hourAngle.negated();
            transit = transit.plus(Duration.ofMillis(Math.round(ahead.degrees() / SUN_DEG_PER_HOUR * 3_600_000)));
        }
        return transit.truncatedTo(ChronoUnit.SECONDS);
    }
}
