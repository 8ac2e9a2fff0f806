package polewright.alignment.fix;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import polewright.mount.EvidenceThreshold;

/**
 * The likely cause of a sighting that does not fit. Low in the east or west, a drift read the wrong way and a drift of
 * a star on the other side of the meridian look the same; both are then named.
 */
final class LikelyCause {
    private static final double EXPLAINS_AWAY = 0.25;
    private static final double A_STAR_THAT_FITS = 3 * Contradictions.HUNDRED_TO_ONE;
    private static final double AS_LIKELY = EvidenceThreshold.TEN_TO_ONE;

    private LikelyCause() {}

    private record Fitting(String cause, double cost) {}

    /**
     * Completes "it would fit if …"; empty when no usual mistake explains it.
     *
     * @param interpretation the night without it
     */
    static Optional<String> of(Interpretation interpretation, Step.Sighted sighted, Alternatives alternatives) {
        AxisState state = interpretation.stateFor(sighted);
        double asRead = interpretation.innovation(sighted);
        double scatter = interpretation.smoother().scatterOf(sighted);
        List<Fitting> fitting = new ArrayList<>();
        mostLikely(alternatives.misreadings(sighted), asRead, sighted, state, scatter)
                .ifPresent(fitting::add);
        // With many stars to choose from, one fits by chance.
        if (asRead > A_STAR_THAT_FITS) {
            mostLikely(alternatives.otherStars(sighted), asRead, sighted, state, scatter)
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

    /** Takes the n-th alternative to be n times less likely than the first. */
    private static Optional<Fitting> mostLikely(
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
