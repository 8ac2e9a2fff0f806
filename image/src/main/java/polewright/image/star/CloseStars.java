package polewright.image.star;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Stars so close together that their light overlaps, or that they are duplicates. */
final class CloseStars {
    private static final double SAME = 0.7;
    // Around a saturated star, its diffraction spikes and the ring of its wings look like faint stars.
    private static final double HALO = 1.5;
    private static final double HALO_SHARE = 0.05;
    private static final double MOST_REACH = 64;
    // Beyond this many sigmas of either star's width there is only background.
    private static final double REACH_SIGMAS = 3.5;
    private static final double WORTH_IT = 0.01;
    private static final double SAME_STILL = 1;
    private static final int ROUNDS = 2;
    // A change of less than this fraction of a neighbour's own uncertainty affects nothing else.
    private static final double PLAINLY = 0.2;

    private final List<MeasuredStar> stars;
    private final Neighbourhood all;
    private final double[] reach;

    private CloseStars(List<MeasuredStar> stars) {
        this.stars = stars;
        all = new Neighbourhood(stars, MOST_REACH);
        reach = stars.stream()
                .mapToDouble(m -> REACH_SIGMAS * Math.sqrt(m.fit().shape().majorVariance()))
                .toArray();
    }

    /** Removes duplicate measurements of one star; the brightest first. */
    static List<MeasuredStar> merged(List<MeasuredStar> stars) {
        List<MeasuredStar> ordered = stars.stream()
                .sorted(Comparator.comparingDouble((MeasuredStar m) -> m.star().flux())
                        .reversed())
                .toList();
        Neighbourhood near = new Neighbourhood(ordered, MOST_REACH);
        boolean[] taken = new boolean[ordered.size()];
        List<MeasuredStar> kept = new ArrayList<>();
        for (int i = 0; i < ordered.size(); i++) {
            MeasuredStar star = ordered.get(i);
            boolean[] same = new boolean[1];
            near.forEachAbout(star, j -> same[0] |= taken[j] && has(ordered.get(j), star));
            if (!same[0]) {
                taken[i] = true;
                kept.add(star);
            }
        }
        return kept;
    }

    private static boolean has(MeasuredStar brighter, MeasuredStar star) {
        double apart = brighter.distanceTo(star);
        boolean halo = brighter.star().saturated()
                && star.star().flux() < HALO_SHARE * brighter.star().flux()
                && apart < HALO * brighter.star().fwhm();
        return halo || apart < Math.max(1, SAME * brighter.star().fwhm());
    }

    /** Remeasures each star without the light of its neighbours, until those no longer change. */
    static List<MeasuredStar> apart(List<MeasuredStar> stars, StarMeasurer measurer) {
        List<MeasuredStar> now = stars;
        boolean[] changed = new boolean[stars.size()];
        Arrays.fill(changed, true);
        for (int round = 0; round < ROUNDS; round++) {
            CloseStars before = new CloseStars(now);
            boolean[] look = changed;
            List<MeasuredStar> after = IntStream.range(0, now.size())
                    .parallel()
                    .mapToObj(i -> before.alone(i, look, measurer))
                    .toList();
            changed = new boolean[stars.size()];
            for (int i = 0; i < changed.length; i++) {
                changed[i] = isSignificant(now.get(i).star(), after.get(i).star());
            }
            now = after;
        }
        return now;
    }

    /** Whether a star's position or light changed enough to matter to its neighbours. */
    private static boolean isSignificant(FoundStar before, FoundStar after) {
        return Math.abs(after.x() - before.x()) > PLAINLY * before.sigmaX()
                || Math.abs(after.y() - before.y()) > PLAINLY * before.sigmaY()
                || Math.abs(after.flux() - before.flux()) > PLAINLY * before.flux() / before.peakToNoise();
    }

    private MeasuredStar alone(int index, boolean[] changed, StarMeasurer measurer) {
        MeasuredStar star = stars.get(index);
        List<Fit> neighbours = new ArrayList<>();
        boolean[] any = new boolean[1];
        all.forEachAbout(star, j -> {
            if (j != index && reaches(j, index)) {
                neighbours.add(stars.get(j).fit());
                any[0] |= changed[j];
            }
        });
        if (!any[0]) {
            return star;
        }
        Optional<MeasuredStar> again =
                measurer.measure(star.peak(), neighbours).filter(m -> m.distanceTo(star) < SAME_STILL);
        return again.orElse(star);
    }

    private boolean reaches(int other, int star) {
        FoundStar one = stars.get(other).star();
        FoundStar two = stars.get(star).star();
        double dx = one.x() - two.x();
        double dy = one.y() - two.y();
        double far = reach[other] + reach[star];
        return dx * dx + dy * dy < far * far && one.flux() > WORTH_IT * two.flux();
    }
}
