package polewright.night;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import polewright.axis.advice.SightingKind;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStar;
import polewright.sky.body.SunGuard;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/**
 * A star that suits a sighting here and now, and where to look for it.
 *
 * @param star which star
 * @param direction where it is seen
 */
public record SuggestedStar(NamedStar star, RefractedDirection direction) {
    private static final double EASY_MAGNITUDE = 3.5;
    private static final double FAINTEST = 4.5;
    // Worse than any magnitude in the list.
    private static final double UNFIT = 1000;
    // Lower than this, refraction bends a drift by more than a visual allowance.
    private static final Angle LOWEST = Angle.ofDegrees(22);
    // Higher than this, the neck and the fork complain.
    private static final Angle HIGHEST = Angle.ofDegrees(78);

    /** The best of {@code stars} for this kind of sighting; empty when it needs none, when none is up, and by day. */
    public static Optional<SuggestedStar> forSighting(
            SightingKind kind, Site site, Weather weather, Instant at, List<NamedStar> stars) {
        return switch (kind) {
            case COMPASS, SHADOW, LEVEL_AND_SCALE, FRAMES -> Optional.empty();
            case STILL_POINT -> pick(site, weather, at, stars, Angle.ZERO, place -> poleDistancePenalty(site, place));
            case DRIFT_ON_MERIDIAN -> pick(site, weather, at, stars, LOWEST, SuggestedStar::offMeridianPenalty);
            case DRIFT_EAST_OR_WEST -> pick(site, weather, at, stars, LOWEST, SuggestedStar::offSixHoursPenalty);
        };
    }

    private static Optional<SuggestedStar> pick(
            Site site,
            Weather weather,
            Instant at,
            List<NamedStar> stars,
            Angle lowest,
            ToDoubleFunction<HourAnglePlace> penalty) {
        ObservingMoment moment = ObservingMoment.of(site, SkyTime.of(at), weather);
        // By day no star is suggested at all: whoever sweeps for one may sweep across the Sun.
        if (SunGuard.at(moment).isSunUp()) {
            return Optional.empty();
        }
        record Scored(SuggestedStar star, double score) {}
        return stars.stream()
                .filter(star -> star.magnitude() <= FAINTEST || isNearAPole(star))
                .map(star -> {
                    var apparent = moment.apparent(star.place());
                    double unfit = penalty.applyAsDouble(moment.hourAngle(apparent));
                    return new Scored(new SuggestedStar(star, moment.refracted(apparent)), star.magnitude() + unfit);
                })
                .filter(s -> s.score() < UNFIT / 2)
                .filter(s -> s.star().direction().altitude().compareTo(lowest) > 0
                        && s.star().direction().altitude().compareTo(HIGHEST) < 0)
                .min(Comparator.comparingDouble(Scored::score))
                .map(Scored::star);
    }

    private static boolean isNearAPole(NamedStar star) {
        return Math.abs(star.place().declination().degrees()) > 87;
    }

    // The brightest within two degrees of the pole, however faint: Polaris in the north, Sigma Octantis in the south.
    private static double poleDistancePenalty(Site site, HourAnglePlace place) {
        double fromPoleDeg = 90 - site.hemisphereSign() * place.declination().degrees();
        return fromPoleDeg < 2 ? 0 : UNFIT;
    }

    private static double offMeridianPenalty(HourAnglePlace place) {
        double hourAngleDeg = Math.abs(place.hourAngle().degrees());
        double declinationDeg = Math.abs(place.declination().degrees());
        return hourAngleDeg > 25 || declinationDeg > 35 ? UNFIT : hourAngleDeg / 10 + declinationDeg / 20;
    }

    private static double offSixHoursPenalty(HourAnglePlace place) {
        double fromSixHoursDeg = Math.abs(Math.abs(place.hourAngle().degrees()) - 90);
        double declinationDeg = Math.abs(place.declination().degrees());
        return fromSixHoursDeg > 35 || declinationDeg > 60 ? UNFIT : fromSixHoursDeg / 10 + declinationDeg / 40;
    }

    /** Whether people can be expected to see it without optics. */
    public boolean isBright() {
        return star.magnitude() <= EASY_MAGNITUDE;
    }
}
