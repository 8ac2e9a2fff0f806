package polewright.simulation;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import polewright.alignment.advice.AdvisedStar;
import polewright.session.BrightStars;
import polewright.sky.atlas.NamedStar;
import polewright.sky.body.FixedStar;
import polewright.sky.place.ObservingMoment;

/**
 * The star a handbook recommends: the pole star; for azimuth, a bright one near the meridian and the equator; for
 * altitude, a fairly low one in the east or west (common practice).
 */
record HandbookStar(List<NamedStar> stars) {
    private static final double OFF_MERIDIAN_DEG = 25;
    private static final double OFF_EQUATOR_DEG = 35;
    private static final double OFF_SIX_HOURS_DEG = 35;
    private static final double HIGHEST_DECLINATION_DEG = 60;

    Optional<FixedStar> ofThePole(ObservingMoment moment) {
        return BrightStars.poleStar(moment).flatMap(this::fixed);
    }

    Optional<FixedStar> nearTheMeridian(ObservingMoment moment) {
        return brightest(
                moment,
                star -> hourAngleDeg(star) < OFF_MERIDIAN_DEG && declinationDeg(star) < OFF_EQUATOR_DEG,
                star -> hourAngleDeg(star) / 10 + declinationDeg(star) / 20);
    }

    Optional<FixedStar> inTheEastOrWest(ObservingMoment moment) {
        return brightest(
                moment,
                star -> Math.abs(hourAngleDeg(star) - 90) < OFF_SIX_HOURS_DEG
                        && declinationDeg(star) < HIGHEST_DECLINATION_DEG,
                star -> Math.abs(hourAngleDeg(star) - 90) / 10 + declinationDeg(star) / 40);
    }

    /** Brightest of the suitable stars; ten degrees from the ideal direction count as one magnitude. */
    private Optional<FixedStar> brightest(
            ObservingMoment moment, Predicate<AdvisedStar> suits, ToDoubleFunction<AdvisedStar> deviation) {
        return BrightStars.upAt(moment).stream()
                .filter(suits)
                .min(Comparator.comparingDouble(star -> star.magnitude() + deviation.applyAsDouble(star)))
                .flatMap(this::fixed);
    }

    private Optional<FixedStar> fixed(AdvisedStar seen) {
        return stars.stream()
                .filter(star -> star.label().equals(seen.name()))
                .findFirst()
                .map(star -> new FixedStar(star.label(), star.place()));
    }

    private static double hourAngleDeg(AdvisedStar star) {
        return Math.abs(star.place().hourAngle().degrees());
    }

    private static double declinationDeg(AdvisedStar star) {
        return Math.abs(star.place().declination().degrees());
    }
}
