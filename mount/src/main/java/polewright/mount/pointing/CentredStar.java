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
 * A centring as it was read.
 *
 * @param at when
 * @param star which star, or any place that is known
 * @param display what the mount said
 * @param isThroughPole whether the fork had gone through the pole to get there
 * @param sigma 1 sigma of the centring in each direction on the sky
 */
public record CentredStar(Instant at, SkyBody star, MountDisplay display, boolean isThroughPole, Angle sigma) {
    /** A star in the middle of an ordinary eyepiece's field, by eye (common practice). */
    public static final Angle USUAL_SIGMA = Angle.ofArcminutes(1);

    /** Refraction lifts what is so far below a level horizon; a hilltop sees no lower than that either. */
    private static final double LOWEST_DEG = -1.5;

    /** The same, centred later by so much, or earlier if that is below zero. */
    public CentredStar movedBy(Duration shift) {
        return new CentredStar(at.plus(shift), star, display, isThroughPole, sigma);
    }

    /** Where it was seen and what the mount read, both as hour angle and declination of that site and time. */
    public Centring reduced(Site site, Weather weather) {
        return reduced(ObservingMoment.of(site, SkyTime.of(at), weather));
    }

    /** The same by a moment that is worked out already; it has to be that of this star. */
    Centring reduced(ObservingMoment moment) {
        RefractedDirection direction = moment.refracted(Ephemeris.apparent(star, moment));
        HourAnglePlace seen = moment.hourAngle(new AirlessDirection(direction.enu()));
        return new Centring(star.label(), seen, reading(moment), sigma);
    }

    /** Whether it was above the horizon; by a moment that is worked out already and has to be that of this star. */
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
