package polewright.image.star;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Stars so near each other that one's light falls on the other, or that both are one. */
final class CloseStars {
    private static final double SAME = 0.7;
    // About a star with a full core, its rays and the ring of its wings look like faint stars.
    private static final double HALO = 1.5;
    private static final double HALO_SHARE = 0.05;
    private static final double MOST_REACH = 64;
    // Beyond so many sigmas of either star's width the light is that of the sky.
    private static final double REACH_SIGMAS = 3.5;
    private static final double WORTH_IT = 0.01;
    private static final double SAME_STILL = 1;
    private static final int ROUNDS = 2;

    private CloseStars() {}

    /** Of measurements that fell on the same star, one; the brightest first. */
    static List<MeasuredStar> merged(List<MeasuredStar> stars) {
        List<MeasuredStar> kept = new ArrayList<>();
        Neighbourhood taken = new Neighbourhood(MOST_REACH);
        stars.stream()
                .sorted(Comparator.comparingDouble((MeasuredStar m) -> m.star().flux())
                        .reversed())
                .forEach(star -> {
                    if (taken.about(star).stream().noneMatch(other -> has(other, star))) {
                        kept.add(star);
                        taken.add(star);
                    }
                });
        return kept;
    }

    private static boolean has(MeasuredStar brighter, MeasuredStar star) {
        double apart = brighter.distanceTo(star);
        boolean halo = brighter.star().saturated()
                && star.star().flux() < HALO_SHARE * brighter.star().flux()
                && apart < HALO * brighter.star().fwhm();
        return halo || apart < Math.max(1, SAME * brighter.star().fwhm());
    }

    /** The same, each measured again without the light of those beside it. */
    static List<MeasuredStar> apart(List<MeasuredStar> stars, StarMeasurer measurer) {
        List<MeasuredStar> now = stars;
        for (int round = 0; round < ROUNDS; round++) {
            Neighbourhood all = new Neighbourhood(MOST_REACH);
            now.forEach(all::add);
            now = now.parallelStream().map(star -> alone(star, all, measurer)).toList();
        }
        return now;
    }

    private static MeasuredStar alone(MeasuredStar star, Neighbourhood all, StarMeasurer measurer) {
        List<Fit> beside = all.about(star).stream()
                .filter(other -> !other.equals(star) && reaches(other, star))
                .map(MeasuredStar::fit)
                .toList();
        if (beside.isEmpty()) {
            return star;
        }
        Optional<MeasuredStar> again =
                measurer.measure(star.peak(), beside).filter(m -> m.distanceTo(star) < SAME_STILL);
        return again.orElse(star);
    }

    private static boolean reaches(MeasuredStar other, MeasuredStar star) {
        double reach = REACH_SIGMAS
                * (Math.sqrt(other.fit().shape().majorVariance())
                        + Math.sqrt(star.fit().shape().majorVariance()));
        return other.distanceTo(star) < reach
                && other.star().flux() > WORTH_IT * star.star().flux();
    }
}
