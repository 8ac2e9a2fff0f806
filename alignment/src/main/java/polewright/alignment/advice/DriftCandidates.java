package polewright.alignment.advice;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.alignment.sighting.StarDrift;
import polewright.mount.OffsetCovariance;
import polewright.sky.angle.Angle;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.Site;

/** The stars that could be watched for drift, for how long, and the information each would give. */
final class DriftCandidates {
    private static final int[] WATCHED_MINUTES = {3, 5, 7, 10, 15, 20};
    // Some degrees off, a drift of a minute or two is enough. Before the axis is roughly known, finding the star takes
    // too long for so short a watch to be worthwhile.
    private static final int[] WATCHED_ONCE_KNOWN = {1, 2, 3, 5, 7, 10, 15, 20};
    // Stars are compared at this length first; the best are then evaluated at every length.
    private static final int USUAL_MINUTES = 10;
    private static final int MOST_STARS = 6;
    private static final double SETTING_MINUTES = 2;
    // A fainter star takes longer to identify.
    private static final double MINUTES_A_MAGNITUDE = 0.25;
    private static final double SIDEREAL_RAD_PER_MINUTE = 0.00437527;
    private static final Angle HALF_WAY = Angle.ofDegrees(45);
    // Refraction at a zenith distance of 45°, and the relative error of the atmospheric model.
    private static final double REFRACTION_ARCMIN = 58.07 / 60;
    private static final double AIR_SHARE = 0.1;
    private static final double LEAST_SINE_OF_ALTITUDE = 0.2;

    private final Site site;
    private final double readingArcmin;
    private final List<AdvisedStar> stars;
    private final int[] lengths;

    DriftCandidates(Situation situation) {
        this.site = situation.fix().state().site();
        this.readingArcmin = StarDrift.usualSigma(situation.rig()).arcminutes();
        this.stars = situation.stars();
        this.lengths = !situation.fix().isDetermined() ? WATCHED_MINUTES : WATCHED_ONCE_KNOWN;
    }

    /**
     * The stars that reduce {@code before} most, including both kinds of drift, each watched for several lengths of
     * time.
     */
    Stream<Candidate> of(OffsetCovariance before) {
        if (stars.isEmpty()) {
            return Stream.of(0.0, -90.0)
                    .map(deg -> new HourAnglePlace(Angle.ofDegrees(deg), Angle.ZERO))
                    .flatMap(place -> watches(Optional.empty(), place, 0));
        }
        List<Candidate> byWorth = stars.stream()
                .filter(star -> !isPoleStar(star, site))
                .map(star -> watch(Optional.of(star), star.place(), star.magnitude(), USUAL_MINUTES))
                .sorted(Comparator.comparingDouble(c -> -c.information().narrowing(before) / c.minutes()))
                .toList();
        List<Candidate> best = byWorth.stream().limit(MOST_STARS).toList();
        // The best of the other kind serves an observer who cannot see that part of the sky.
        Stream<Candidate> bestOfTheOtherKind = byWorth.stream()
                .filter(c -> best.stream().noneMatch(b -> b.kind() == c.kind()))
                .limit(1);
        return Stream.concat(best.stream(), bestOfTheOtherKind)
                .map(c -> c.star().orElseThrow())
                .flatMap(star -> watches(Optional.of(star), star.place(), star.magnitude()));
    }

    /** Whether the star is within two degrees of the elevated pole, too close for its drift to be useful. */
    static boolean isPoleStar(AdvisedStar star, Site site) {
        return star.place().declination().degrees() * site.hemisphereSign() > 88;
    }

    private Stream<Candidate> watches(Optional<AdvisedStar> star, HourAnglePlace place, double magnitude) {
        return Arrays.stream(lengths).mapToObj(minutes -> watch(star, place, magnitude, minutes));
    }

    /**
     * The drift in declination, −ω (e_E cos H + e_U sin H), integrated over the watch: a row of its partial
     * derivatives, in arcminutes of drift per arcminute of east and of up.
     */
    private Candidate watch(Optional<AdvisedStar> star, HourAnglePlace place, double magnitude, int minutes) {
        double from = place.hourAngle().radians();
        double to = from + minutes * SIDEREAL_RAD_PER_MINUTE;
        double east = Math.sin(from) - Math.sin(to);
        double up = Math.cos(to) - Math.cos(from);
        double sigma = Math.hypot(readingArcmin, AIR_SHARE * refractionDrift(place, up));
        boolean nearMeridian = Math.abs(place.hourAngle().sin()) < HALF_WAY.sin();
        return new Candidate(
                nearMeridian ? SightingKind.DRIFT_ON_MERIDIAN : SightingKind.DRIFT_EAST_OR_WEST,
                star,
                minutes,
                SETTING_MINUTES + MINUTES_A_MAGNITUDE * Math.max(0, magnitude) + minutes,
                InformationMatrix.ofRow(east, up, sigma));
    }

    /**
     * The contribution of refraction to the drift: ω sin H k sin φ cos φ / sin² of the altitude, integrated over the
     * watch.
     */
    private double refractionDrift(HourAnglePlace place, double cosineChange) {
        double sinLat = site.latitude().sin();
        double cosLat = site.latitude().cos();
        double sinAltitude = sinLat * place.declination().sin()
                + cosLat * place.declination().cos() * place.hourAngle().cos();
        double bounded = Math.max(LEAST_SINE_OF_ALTITUDE, sinAltitude);
        return REFRACTION_ARCMIN * sinLat * cosLat * cosineChange / (bounded * bounded);
    }
}
