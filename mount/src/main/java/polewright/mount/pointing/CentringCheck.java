package polewright.mount.pointing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import polewright.mount.EvidenceThreshold;
import polewright.mount.rig.MountKind;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * Cross-checks centrings against each other.
 *
 * <p>A star is an outlier if its deviation from a model of the others would occur by chance less than once in a
 * thousand, and if the data are a hundred times more likely without it than without any other. If no single star meets
 * both, all candidates are named. With three stars or fewer none can: any two agree with some mount.
 *
 * <p>What centrings cannot show: a wrong latitude (hour angle and declination hardly depend on it); a wrong time or
 * longitude of all centrings, which shifts the star and a right-ascension reading equally, and which the zero of an
 * hour-angle reading absorbs; nor the wrong equinox for all, which looks like an axis offset of some arcminutes. Such a
 * mistake shows only if a star would have been below the horizon, or so low that refraction reveals it.
 */
public final class CentringCheck {
    private static final double ONCE_IN_A_THOUSAND = 13.816;
    private static final int ANY_AGREE = 3;
    /**
     * Up to this many stars, each is left out in turn; with more, only those that the linear estimate finds suspect.
     */
    private static final int FITTED_EACH = 12;

    /**
     * With 6, one table of 60 with 14 to 33 stars, half of them wrong, named a different star than refitting without
     * each.
     */
    private static final int CLEARED_IN_A_ROW = 12;

    private static final int FEW = 8;
    /** More than any mount has: nine terms, each at ten times its usual size. */
    private static final double MOST_MISFIT_OF_TERMS = 900;

    private static final Angle NEAR_AN_HOUR = Angle.ofArcminutes(10);

    private final Set<PointingTerm> possible;
    private final Site site;
    private final List<CentredStar> stars;
    private final CentringMoments moments;
    /** Cached while one check runs: the same reductions are needed many times. */
    private final Map<Meant, Centring> reductions = new HashMap<>();

    private final Map<Meant, Boolean> up = new HashMap<>();

    /** One round uses the same subsets more than once, and the next starts with the last one's. */
    private final Map<List<Integer>, PointingModel> models = new HashMap<>();

    private final LikelyMistakes mistakes;

    private CentringCheck(
            Set<PointingTerm> possible, Site site, Weather weather, List<CentredStar> stars, LikelyMistakes mistakes) {
        this.possible = possible;
        this.site = site;
        this.moments = new CentringMoments(site, weather, stars);
        this.stars = stars;
        this.mistakes = mistakes;
    }

    /**
     * Which centrings to use, and what is probably wrong with the others.
     *
     * @param named stars that may have been mistaken for another: the bright ones with a name
     */
    public static CheckedCentrings of(
            MountKind kind, Site site, Weather weather, List<CentredStar> stars, List<FixedStar> named) {
        return new CentringCheck(PointingTerm.of(kind), site, weather, List.copyOf(stars), LikelyMistakes.among(named))
                .checked();
    }

    /** Which centrings to use, without looking for likely mistakes in the others. */
    public static List<CentredStar> believed(MountKind kind, Site site, Weather weather, List<CentredStar> stars) {
        return new CentringCheck(PointingTerm.of(kind), site, weather, List.copyOf(stars), LikelyMistakes.NOT_ASKED)
                .checked()
                .believed();
    }

    private CheckedCentrings checked() {
        List<CentringDoubt> doubts = new ArrayList<>();
        Set<Integer> remaining =
                new TreeSet<>(IntStream.range(0, stars.size()).boxed().toList());
        List<Integer> down =
                remaining.stream().filter(i -> !isUp(site, stars.get(i))).toList();
        if (!down.isEmpty()) {
            doubts.add(new CentringDoubt.NotUp(down, mistakesThatRaiseAll()));
            remaining.removeAll(down);
        }
        boolean isDone = false;
        while (!isDone && remaining.size() > 1) {
            PointingModel all = model(remaining);
            List<Integer> order = mostSuspectFirst(remaining, all);
            isDone = order.stream().map(i -> without(remaining, i)).allMatch(w -> surprise(w) <= ONCE_IN_A_THOUSAND);
            if (!isDone) {
                CentringDoubt doubt = doubt(remaining, order, all.misfit());
                doubts.add(doubt);
                isDone = !(doubt instanceof CentringDoubt.OneWrong);
            }
        }
        if (remaining.size() >= ANY_AGREE) {
            zeroByHours(remaining, doubts);
        }
        return new CheckedCentrings(remaining.stream().map(stars::get).toList(), doubts);
    }

    /** Diagnoses a contradiction and removes the centrings not to be used from {@code remaining}. */
    private CentringDoubt doubt(Set<Integer> remaining, List<Integer> order, double misfit) {
        List<Without> without = worthLeavingOut(remaining, order);
        double least = without.get(0).misfit();
        List<SharedMistake> common = remaining.size() <= ANY_AGREE
                ? List.of()
                : agreeing(remaining, Math.min(misfit, least + ONCE_IN_A_THOUSAND));
        if (!common.isEmpty()) {
            remaining.clear();
            return new CentringDoubt.AllMistaken(common);
        }
        List<Without> suspects = remaining.size() <= ANY_AGREE
                ? without
                : without.stream()
                        .filter(w -> w.misfit() < least + EvidenceThreshold.HUNDRED_TO_ONE)
                        .toList();
        if (suspects.size() == 1) {
            Without wrong = suspects.get(0);
            remaining.remove(wrong.index());
            return new CentringDoubt.OneWrong(wrong.index(), surprise(wrong), mistakes(wrong));
        }
        List<Integer> indexes = suspects.stream().map(Without::index).sorted().toList();
        indexes.forEach(remaining::remove);
        return new CentringDoubt.OneOf(
                indexes,
                suspects.stream()
                        .flatMap(w -> mistakes(w).stream())
                        .sorted(Comparator.comparingDouble(CentringMistake::square))
                        .toList());
    }

    /**
     * Sorted by how much the misfit would drop without each, assuming a linear fit; in their own order if there are
     * few.
     */
    private List<Integer> mostSuspectFirst(Set<Integer> remaining, PointingModel all) {
        if (remaining.size() <= FITTED_EACH) {
            return List.copyOf(remaining);
        }
        Map<Integer, Double> falls = new HashMap<>();
        double[] inOrder = all.misfitReductions();
        for (int index : remaining) {
            falls.put(index, inOrder[falls.size()]);
        }
        return remaining.stream()
                .sorted(Comparator.comparing((Integer i) -> falls.get(i)).reversed())
                .toList();
    }

    /**
     * Fits without each star that may be wrong, the likeliest first. Fitting takes most of the time. So with many stars
     * only those ranked first by the linear estimate are fitted, until enough in a row are no longer suspect, and a fit
     * stops as soon as its star is known not to be.
     */
    private List<Without> worthLeavingOut(Set<Integer> remaining, List<Integer> order) {
        List<Without> fitted = new ArrayList<>();
        double least = Double.POSITIVE_INFINITY;
        int cleared = 0;
        for (int i = 0; i < order.size() && (cleared < CLEARED_IN_A_ROW || remaining.size() <= FITTED_EACH); i++) {
            double misfitLimit =
                    remaining.size() <= ANY_AGREE ? Double.POSITIVE_INFINITY : least + EvidenceThreshold.HUNDRED_TO_ONE;
            Without without = withoutUnder(misfitLimit, remaining, order.get(i));
            fitted.add(without);
            double misfit = without.misfit();
            cleared = misfit < least + EvidenceThreshold.HUNDRED_TO_ONE ? 0 : cleared + 1;
            least = Math.min(least, misfit);
        }
        fitted.sort(Comparator.comparingDouble(Without::misfit));
        return fitted;
    }

    private double surprise(Without without) {
        return without.others().surprise(reduced(site, stars.get(without.index())));
    }

    private record Without(int index, PointingModel others, double misfit) {}

    private Without without(Set<Integer> remaining, int index) {
        return withoutUnder(Double.POSITIVE_INFINITY, remaining, index);
    }

    /** The same; a fit whose misfit will stay above {@code misfitLimit} is not iterated to convergence. */
    private Without withoutUnder(double misfitLimit, Set<Integer> remaining, int index) {
        Set<Integer> others = new TreeSet<>(remaining);
        others.remove(index);
        List<Integer> key = List.copyOf(others);
        PointingModel settled = models.get(key);
        if (settled != null) {
            return new Without(index, settled, settled.misfit());
        }
        PointingModel model = PointingFit.modelUnder(misfitLimit, possible, site, reduced(key));
        double misfit = model.misfit();
        if (misfit < misfitLimit) {
            models.put(key, model);
        }
        return new Without(index, model, misfit);
    }

    private List<CentringMistake> mistakes(Without without) {
        CentredStar star = stars.get(without.index());
        return mistakes.of(without.index(), star, moments.of(site, star.at()), without.others());
    }

    private PointingModel model(Set<Integer> some) {
        return models.computeIfAbsent(
                List.copyOf(some), indexes -> PointingFit.model(possible, site, reduced(indexes)));
    }

    private PointingModel model(Site at, List<CentredStar> some) {
        return PointingFit.model(
                possible, at, some.stream().map(star -> reduced(at, star)).toList());
    }

    private List<Centring> reduced(List<Integer> indexes) {
        List<Centring> reduced = new ArrayList<>(indexes.size());
        for (int index : indexes) {
            reduced.add(reduced(site, stars.get(index)));
        }
        return reduced;
    }

    private Centring reduced(Site at, CentredStar star) {
        return reductions.computeIfAbsent(new Meant(at, star), key -> star.reduced(moments.of(at, star.at())));
    }

    private boolean isUp(Site at, CentredStar star) {
        return up.computeIfAbsent(new Meant(at, star), key -> star.isUp(moments.of(at, star.at())));
    }

    /** A centring as it may have been meant. */
    private record Meant(Site site, CentredStar star) {}

    /** The shared mistakes that make all agree, no worse than with a wrong one left out. */
    private List<SharedMistake> agreeing(Set<Integer> remaining, double most) {
        return SharedMistakes.of(site, remaining.stream().map(stars::get).toList()).stream()
                .filter(this::isAllUp)
                .filter(m -> firstFewAgree(m, most))
                .filter(m -> {
                    PointingModel model = model(m.site(), m.meant());
                    return model.misfit() < most && model.allSurprisesBelow(ONCE_IN_A_THOUSAND);
                })
                .toList();
    }

    /**
     * Whether the first few would agree, which is much faster to check. A subset never fits worse alone than within the
     * whole; and if no star is an outlier, the total misfit is at most that many thresholds plus the contribution of
     * the terms.
     */
    private boolean firstFewAgree(SharedMistake mistake, double most) {
        int count = mistake.meant().size();
        if (count <= FEW) {
            return true;
        }
        double allowed = Math.min(most, ONCE_IN_A_THOUSAND * count + MOST_MISFIT_OF_TERMS);
        return model(mistake.site(), mistake.meant().subList(0, FEW)).misfit() < allowed;
    }

    /** The shared mistakes that would put every star above the horizon; not informative if most already are. */
    private List<SharedMistake> mistakesThatRaiseAll() {
        return SharedMistakes.of(site, stars).stream().filter(this::isAllUp).toList();
    }

    private boolean isAllUp(SharedMistake mistake) {
        return mistake.meant().stream().allMatch(star -> isUp(mistake.site(), star));
    }

    private void zeroByHours(Set<Integer> remaining, List<CentringDoubt> doubts) {
        Angle zero = model(remaining).terms().of(PointingTerm.HOUR_ANGLE_ZERO).wrappedSigned();
        int hours = (int) Math.round(zero.hours());
        boolean isNear = zero.minus(Angle.ofHours(hours)).abs().compareTo(NEAR_AN_HOUR) < 0;
        if (isNear && (Math.abs(hours) == 1 || Math.abs(hours) == 12)) {
            doubts.add(new CentringDoubt.ZeroByHours(hours));
        }
    }
}
