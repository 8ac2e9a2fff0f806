package polewright.axis.advice;

import java.util.List;
import java.util.Optional;
import polewright.axis.AxisOffset;
import polewright.axis.OffsetCovariance;
import polewright.axis.fix.AxisState;
import polewright.axis.fix.Explanation;
import polewright.axis.fix.Fix;

/**
 * The two likeliest places of an axis on which explanations do not agree.
 *
 * @param apart from the one to the other
 * @param both their covariances together
 */
record TwoPlaces(AxisOffset apart, OffsetCovariance both) {
    // Nearer than that they are one place.
    private static final double DIFFERENT_SQUARED_SIGMAS = 1;
    // Odds of a hundred to one.
    private static final double DECIDES = 2 * Math.log(100);

    /** Those of a fix; empty if its explanations agree, or differ about the site itself. */
    static Optional<TwoPlaces> of(Fix fix) {
        if (!(fix instanceof Fix.Dubious dubious) || dubious.dispute() != Fix.Dispute.THE_AXIS) {
            return Optional.empty();
        }
        AxisState likeliest = fix.explanations().get(0).state();
        return fix.explanations().stream()
                .map(Explanation::state)
                .filter(state -> state.site().equals(likeliest.site()))
                .map(state -> new TwoPlaces(
                        state.offset().minus(likeliest.offset()),
                        likeliest.offsetCovariance().plus(state.offsetCovariance())))
                .filter(two -> two.both().normalisedSquare(two.apart()) > DIFFERENT_SQUARED_SIGMAS)
                .findFirst();
    }

    /** Those candidates that decide between the two, or come half as near to it as the best. */
    List<Candidate> decided(List<Candidate> candidates) {
        double best = candidates.stream().mapToDouble(this::tellsApart).max().orElse(0);
        return candidates.stream()
                .filter(candidate -> tellsApart(candidate) >= Math.min(DECIDES, best / 2))
                .toList();
    }

    private double tellsApart(Candidate candidate) {
        return candidate.tells().separation(apart, both);
    }
}
