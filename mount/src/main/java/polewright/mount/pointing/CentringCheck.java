package polewright.mount.pointing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import polewright.mount.rig.MountKind;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * Weighs centrings against each other.
 *
 * <p>A star is wrong when it surprises a model of the others more than chance does once in a thousand, and when the night
 * is a hundred times likelier without it than without any other; when that cannot be said, all that may be it are named.
 * With three stars or fewer it never can be: any two agree with some mount.
 *
 * <p>What centrings cannot tell: a wrong latitude (a star's hour angle and declination hardly know of it), and a wrong time
 * or longitude of all, which a mount that reads right ascension shares with the star, and one that reads hour angle takes
 * into its zero; nor the equinox of all, which is an axis some minutes of arc off. Such a mistake shows only when a star would
 * have been below the horizon, or so low that refraction gives it away.
 */
public final class CentringCheck {
    private static final double ONCE_IN_A_THOUSAND = 13.816;
    private static final double HUNDRED_TO_ONE = 2 * Math.log(100);
    private static final int ANY_AGREE = 3;
    /** Up to so many, each star is left out in turn; of more, those that the linear estimate finds suspect. */
    private static final int FITTED_EACH = 12;

    /** With 6, one table of 60 with 14 to 33 stars, half of them wrong, named another star than all refits do. */
    private static final int CLEARED_IN_A_ROW = 12;

    private static final int FEW = 8;
    /** More than any mount has: nine terms, each ten times its usual size. */
    private static final double SHARE_OF_TERMS = 900;

    private static final Angle NEAR_AN_HOUR = Angle.ofArcminutes(10);

    private final Set<PointingTerm> possible;
    private final Site site;
    private final List<CentredStar> stars;
    private final CentringMoments moments;
    /** Kept while one question is answered: the same places are asked for again and again. */
    private final Map<Meant, Centring> reductions = new HashMap<>();

    private final Map<Meant, Boolean> up = new HashMap<>();

    /** A round asks for the same stars more than once, and the next begins with what this one ended with. */
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
     * Which centrings to believe, and what is likely wrong with the others.
     *
     * @param named stars that may have been taken for another: the bright ones with a name
     */
    public static CheckedCentrings of(
            MountKind kind, Site site, Weather weather, List<CentredStar> stars, List<FixedStar> named) {
        return new CentringCheck(PointingTerm.of(kind), site, weather, List.copyOf(stars), LikelyMistakes.among(named))
                .checked();
    }

    /** The same without what is likely wrong with the others: only which to believe. */
    public static List<CentredStar> believed(MountKind kind, Site site, Weather weather, List<CentredStar> stars) {
        return new CentringCheck(PointingTerm.of(kind), site, weather, List.copyOf(stars), LikelyMistakes.NOT_ASKED)
                .checked()
                .believed();
    }

    private CheckedCentrings checked() {
        List<CentringDoubt> doubts = new ArrayList<>();
        Set<Integer> left =
                new TreeSet<>(IntStream.range(0, stars.size()).boxed().toList());
        List<Integer> down =
                left.stream().filter(i -> !isUp(site, stars.get(i))).toList();
        if (!down.isEmpty()) {
            doubts.add(new CentringDoubt.NotUp(down, raising()));
            left.removeAll(down);
        }
        boolean isDone = false;
        while (!isDone && left.size() > 1) {
            PointingModel all = model(left);
            List<Integer> order = mostSuspectFirst(left, all);
            isDone = order.stream().map(i -> without(left, i)).allMatch(w -> surprise(w) <= ONCE_IN_A_THOUSAND);
            if (!isDone) {
                CentringDoubt doubt = doubt(left, order, all.misfit());
                doubts.add(doubt);
                isDone = !(doubt instanceof CentringDoubt.OneWrong);
            }
        }
        if (left.size() >= ANY_AGREE) {
            zeroByHours(left, doubts);
        }
        return new CheckedCentrings(left.stream().map(stars::get).toList(), doubts);
    }

    /** Takes those that are not to be believed out of those that are left. */
    private CentringDoubt doubt(Set<Integer> left, List<Integer> order, double misfit) {
        List<Without> without = worthLeavingOut(left, order);
        double least = without.get(0).misfit();
        List<SharedMistake> common =
                left.size() <= ANY_AGREE ? List.of() : agreeing(left, Math.min(misfit, least + ONCE_IN_A_THOUSAND));
        if (!common.isEmpty()) {
            left.clear();
            return new CentringDoubt.AllMistaken(common);
        }
        List<Without> suspects = left.size() <= ANY_AGREE
                ? without
                : without.stream()
                        .filter(w -> w.misfit() < least + HUNDRED_TO_ONE)
                        .toList();
        if (suspects.size() == 1) {
            Without wrong = suspects.get(0);
            left.remove(wrong.index());
            return new CentringDoubt.OneWrong(wrong.index(), surprise(wrong), mistakes(wrong));
        }
        List<Integer> indexes = suspects.stream().map(Without::index).sorted().toList();
        indexes.forEach(left::remove);
        return new CentringDoubt.OneOf(
                indexes,
                suspects.stream()
                        .flatMap(w -> mistakes(w).stream())
                        .sorted(Comparator.comparingDouble(CentringMistake::square))
                        .toList());
    }

    /** By how much the misfit would fall without each, if a fit were linear; in their own order where it cannot be said. */
    private List<Integer> mostSuspectFirst(Set<Integer> left, PointingModel all) {
        if (left.size() <= FITTED_EACH) {
            return List.copyOf(left);
        }
        Map<Integer, Double> falls = new HashMap<>();
        double[] inOrder = all.fallsWithout();
        for (int index : left) {
            falls.put(index, inOrder[falls.size()]);
        }
        return left.stream()
                .sorted(Comparator.comparing((Integer i) -> falls.get(i)).reversed())
                .toList();
    }

    /**
     * Fits without each star that may be wrong, the likeliest first. A fit costs most of the time, so of many stars only
     * those are fitted that the linear estimate puts first, until so many in a row were no longer suspect; and a fit ends as
     * soon as its star is seen not to be.
     */
    private List<Without> worthLeavingOut(Set<Integer> left, List<Integer> order) {
        List<Without> fitted = new ArrayList<>();
        double least = Double.POSITIVE_INFINITY;
        int cleared = 0;
        for (int i = 0; i < order.size() && (cleared < CLEARED_IN_A_ROW || left.size() <= FITTED_EACH); i++) {
            double hopeless = left.size() <= ANY_AGREE ? Double.POSITIVE_INFINITY : least + HUNDRED_TO_ONE;
            Without without = withoutUnder(hopeless, left, order.get(i));
            fitted.add(without);
            double misfit = without.misfit();
            cleared = misfit < least + HUNDRED_TO_ONE ? 0 : cleared + 1;
            least = Math.min(least, misfit);
        }
        fitted.sort(Comparator.comparingDouble(Without::misfit));
        return fitted;
    }

    private double surprise(Without without) {
        return without.others().surprise(reduced(site, stars.get(without.index())));
    }

    private record Without(int index, PointingModel others, double misfit) {}

    private Without without(Set<Integer> left, int index) {
        return withoutUnder(Double.POSITIVE_INFINITY, left, index);
    }

    /** The same; a misfit that will stay above {@code hopeless} is not lowered to the end. */
    private Without withoutUnder(double hopeless, Set<Integer> left, int index) {
        Set<Integer> others = new TreeSet<>(left);
        others.remove(index);
        List<Integer> key = List.copyOf(others);
        PointingModel settled = models.get(key);
        if (settled != null) {
            return new Without(index, settled, settled.misfit());
        }
        PointingModel model = PointingFit.modelUnder(hopeless, possible, site, reduced(key));
        double misfit = model.misfit();
        if (misfit < hopeless) {
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

    /** By which all agree, no worse than if a wrong one was left out. */
    private List<SharedMistake> agreeing(Set<Integer> left, double most) {
        return SharedMistakes.of(site, left.stream().map(stars::get).toList()).stream()
                .filter(this::isAllUp)
                .filter(m -> mayAgree(m, most))
                .filter(m -> {
                    PointingModel model = model(m.site(), m.meant());
                    return model.misfit() < most && model.surprisesUnder(ONCE_IN_A_THOUSAND);
                })
                .toList();
    }

    /**
     * Whether the first few do: quicker by the number of the rest. A few are fitted no worse alone than among all, and where
     * no star surprises the others, all together are no worse than that many surprises and the terms' own share.
     */
    private boolean mayAgree(SharedMistake mistake, double most) {
        int count = mistake.meant().size();
        if (count <= FEW) {
            return true;
        }
        double allowed = Math.min(most, ONCE_IN_A_THOUSAND * count + SHARE_OF_TERMS);
        return model(mistake.site(), mistake.meant().subList(0, FEW)).misfit() < allowed;
    }

    /** What would have had all of them above the horizon; of no use where most are. */
    private List<SharedMistake> raising() {
        return SharedMistakes.of(site, stars).stream().filter(this::isAllUp).toList();
    }

    private boolean isAllUp(SharedMistake mistake) {
        return mistake.meant().stream().allMatch(star -> isUp(mistake.site(), star));
    }

    private void zeroByHours(Set<Integer> left, List<CentringDoubt> doubts) {
        Angle zero = model(left).terms().of(PointingTerm.HOUR_ANGLE_ZERO).wrappedSigned();
        int hours = (int) Math.round(zero.hours());
        boolean isNear = zero.minus(Angle.ofHours(hours)).abs().compareTo(NEAR_AN_HOUR) < 0;
        if (isNear && (Math.abs(hours) == 1 || Math.abs(hours) == 12)) {
            doubts.add(new CentringDoubt.ZeroByHours(hours));
        }
    }
}
