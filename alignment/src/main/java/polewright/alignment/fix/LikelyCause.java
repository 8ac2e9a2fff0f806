package polewright.alignment.fix;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import polewright.mount.Odds;

/**
 * Why a sighting that is set aside does not fit. Low in the east or west, a drift read the wrong way and one of a star on the
 * other side of the meridian say the same: then both are named.
 */
final class LikelyCause {
    private static final double EXPLAINS_AWAY = 0.25;
    private static final double A_STAR_THAT_FITS = 3 * Contradictions.HUNDRED_TO_ONE;
    private static final double AS_LIKELY = Odds.TEN_TO_ONE;

    private LikelyCause() {}

    private record Fitting(String cause, double cost) {}

    /**
     * Completes "it would fit if …"; empty when no usual mistake explains it.
     *
     * @param account the night without it
     */
    static Optional<String> of(Interpretation account, Step.Sighted sighted, Alternatives alternatives) {
        AxisState state = account.stateFor(sighted);
        double asRead = account.innovation(sighted);
        double scatter = account.smoother().scatterOf(sighted);
        List<Fitting> fitting = new ArrayList<>();
        likeliest(alternatives.misreadings(sighted), asRead, sighted, state, scatter)
                .ifPresent(fitting::add);
        // Of many stars one fits by chance.
        if (asRead > A_STAR_THAT_FITS) {
            likeliest(alternatives.otherStars(sighted), asRead, sighted, state, scatter)
                    .ifPresent(fitting::add);
        }
        double least = fitting.stream().mapToDouble(Fitting::cost).min().orElse(0);
        String causes = fitting.stream()
                .filter(f -> f.cost() <= least + AS_LIKELY)
                .sorted(Comparator.comparingDouble(Fitting::cost))
                .map(Fitting::cause)
                .collect(Collectors.joining(", or "));
        return Optional.of(causes).filter(text -> !text.isEmpty());
    }

    /** Of several that come in order, the n-th is made n times as seldom as the first. */
    private static Optional<Fitting> likeliest(
            List<Alternatives.Meant> alternatives,
            double asRead,
            Step.Sighted sighted,
            AxisState state,
            double scatter) {
        List<Fitting> all = new ArrayList<>();
        for (Alternatives.Meant meant : alternatives) {
            double asMeant =
                    LinearisedSighting.of(meant.model(), state).over(scatter).squaredInnovation(state);
            if (asMeant < ChiSquareLimits.onceInTwenty(sighted.model().size()) && asMeant < EXPLAINS_AWAY * asRead) {
                all.add(new Fitting(meant.cause(), asMeant + 2 * Math.log(meant.rank())));
            }
        }
        return all.stream().min(Comparator.comparingDouble(Fitting::cost));
    }
}
