package polewright.alignment.advice;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.alignment.fix.Fix;
import polewright.alignment.sighting.StarDrift;
import polewright.mount.OffsetCovariance;
import polewright.sky.angle.Angle;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.Site;

/** Which stars to watch for a drift, how long, and what each would tell. */
final class DriftCandidates {
    private static final int[] WATCHED_MINUTES = {3, 5, 7, 10, 15, 20};
    // Some degrees off, a star shows in a minute or two what the screws need. Before the axis is known roughly there is
    // no
    // finding a star soon enough for so short a watch to be worth it.
    private static final int[] WATCHED_ONCE_KNOWN = {1, 2, 3, 5, 7, 10, 15, 20};
    // By this watch stars are compared before each is weighed at every length.
    private static final int USUAL_MINUTES = 10;
    private static final int MOST_STARS = 6;
    private static final double SETTING_MINUTES = 2;
    // A fainter star takes longer to make sure of.
    private static final double MINUTES_A_MAGNITUDE = 0.25;
    private static final double SIDEREAL_RAD_PER_MINUTE = 0.00437527;
    private static final Angle HALF_WAY = Angle.ofDegrees(45);
    // Refraction at the zenith distance of 45°, and how far tonight's air may be from the air reckoned with.
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
        this.lengths = situation.fix() instanceof Fix.Underdetermined ? WATCHED_MINUTES : WATCHED_ONCE_KNOWN;
    }

    /** The stars that narrow {@code before} most, both kinds among them, each watched for several lengths of time. */
    Stream<Candidate> of(OffsetCovariance before) {
        if (stars.isEmpty()) {
            return Stream.of(0.0, -90.0)
                    .map(deg -> new HourAnglePlace(Angle.ofDegrees(deg), Angle.ZERO))
                    .flatMap(place -> watches(Optional.empty(), place, 0));
        }
        List<Candidate> byWorth = stars.stream()
                .filter(star -> !isPoleStar(star, site))
                .map(star -> watch(Optional.of(star), star.place(), star.magnitude(), USUAL_MINUTES))
                .sorted(Comparator.comparingDouble(c -> -c.tells().narrowing(before) / c.minutes()))
                .toList();
        List<Candidate> best = byWorth.stream().limit(MOST_STARS).toList();
        // Whoever cannot see that part of the sky is told the best of the other.
        Stream<Candidate> bestOfTheOtherKind = byWorth.stream()
                .filter(c -> best.stream().noneMatch(b -> b.kind() == c.kind()))
                .limit(1);
        return Stream.concat(best.stream(), bestOfTheOtherKind)
                .map(c -> c.star().orElseThrow())
                .flatMap(star -> watches(Optional.of(star), star.place(), star.magnitude()));
    }

    /** Within two degrees of the pole that is up: too near it for its hour angle to tell anything by its drift. */
    static boolean isPoleStar(AdvisedStar star, Site site) {
        return star.place().declination().degrees() * site.hemisphereSign() > 88;
    }

    private Stream<Candidate> watches(Optional<AdvisedStar> star, HourAnglePlace place, double magnitude) {
        return Arrays.stream(lengths).mapToObj(minutes -> watch(star, place, magnitude, minutes));
    }

    /**
     * The drift in declination, −ω (e_E cos H + e_U sin H) summed up over the watch: a row of what each minute of arc of
     * east and of up makes of it, minutes of arc.
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

    /** What refraction adds to the drift: ω sin H k sin φ cos φ / sin² of the altitude, summed up likewise. */
    private double refractionDrift(HourAnglePlace place, double cosineChange) {
        double sinLat = site.latitude().sin();
        double cosLat = site.latitude().cos();
        double sinAltitude = sinLat * place.declination().sin()
                + cosLat * place.declination().cos() * place.hourAngle().cos();
        double bounded = Math.max(LEAST_SINE_OF_ALTITUDE, sinAltitude);
        return REFRACTION_ARCMIN * sinLat * cosLat * cosineChange / (bounded * bounded);
    }
}
