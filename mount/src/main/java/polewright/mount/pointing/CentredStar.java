package polewright.mount.pointing;

import java.time.Duration;
import java.time.Instant;
import polewright.sky.angle.Angle;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.SkyBody;
import polewright.sky.place.AirlessDirection;
import polewright.sky.place.ApparentPlace;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/**
 * A centring as logged: the star, and the mount's display.
 *
 * @param at time of the centring
 * @param star the star, or any known position
 * @param display the mount's display
 * @param isThroughPole whether the fork went through the pole to get there
 * @param sigma 1 sigma of the centring in each direction on the sky
 */
public record CentredStar(Instant at, SkyBody star, MountDisplay display, boolean isThroughPole, Angle sigma) {
    /** A star centred by eye in an ordinary eyepiece (common practice). */
    public static final Angle USUAL_SIGMA = Angle.ofArcminutes(1);

    /**
     * The lowest altitude below a level horizon at which refraction can still lift a star into view, also from a
     * hilltop.
     */
    private static final double LOWEST_DEG = -1.5;

    /** The same centring, later by a duration (earlier if negative). */
    public CentredStar movedBy(Duration shift) {
        return new CentredStar(at.plus(shift), star, display, isThroughPole, sigma);
    }

    /** The star's position and the mount's reading, both as hour angle and declination for a site and weather. */
    public Centring reduced(Site site, Weather weather) {
        return reduced(ObservingMoment.of(site, SkyTime.of(at), weather));
    }

    /** The same with a moment that has already been computed; it must be this star's. */
    Centring reduced(ObservingMoment moment) {
        RefractedDirection direction = moment.refracted(Ephemeris.apparent(star, moment));
        HourAnglePlace seen = moment.hourAngle(new AirlessDirection(direction.enu()));
        return new Centring(star.label(), seen, reading(moment), sigma);
    }

    /** Whether the star was above the horizon, with a moment that has already been computed and must be this star's. */
    boolean isUp(ObservingMoment moment) {
        return moment.airless(Ephemeris.apparent(star, moment)).altitude().degrees() > LOWEST_DEG;
    }

    CentredStar withAt(Instant other) {
        return new CentredStar(other, star, display, isThroughPole, sigma);
    }

    CentredStar withStar(SkyBody other) {
        return new CentredStar(at, other, display, isThroughPole, sigma);
    }

    CentredStar withDisplay(MountDisplay other) {
        return new CentredStar(at, star, other, isThroughPole, sigma);
    }

    CentredStar withThroughPole(boolean other) {
        return new CentredStar(at, star, display, other, sigma);
    }

    private MountReading reading(ObservingMoment moment) {
        MountReading reading;
        if (display instanceof MountDisplay.RightAscension read) {
            ApparentPlace place = read.isJ2000()
                    ? moment.apparent(CatalogueStar.fixed(read.rightAscension(), read.declination()))
                    : ApparentPlace.of(read.rightAscension(), read.declination());
            HourAnglePlace circles = moment.hourAngle(place);
            reading = new MountReading(circles.hourAngle(), circles.declination());
        } else if (display instanceof MountDisplay.HourAngle read) {
            reading = new MountReading(read.hourAngle(), read.declination());
        } else {
            throw new IllegalStateException("no reading for " + display);
        }
        return isThroughPole ? reading.throughPole() : reading;
    }
}
