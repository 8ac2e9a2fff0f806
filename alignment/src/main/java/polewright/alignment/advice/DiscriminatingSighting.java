package polewright.alignment.advice;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import polewright.alignment.fix.AxisState;
import polewright.alignment.fix.Explanation;
import polewright.alignment.fix.Fix;
import polewright.alignment.fix.Mistake;
import polewright.mount.AxisOffset;
import polewright.mount.Odds;
import polewright.mount.OffsetCovariance;
import polewright.sky.angle.Angle;
import polewright.sky.time.SiderealRate;

/**
 * The likeliest place of an axis and another one, on which explanations do not agree.
 *
 * @param apart from the one to the other
 * @param apartInDrifts the same as drifts show it. By a clock that was wrong, or on another longitude, all hour angles are others
 *     by as much: that turns what drifts say of the axis about the pole, and no drift can tell two places apart that differ
 *     by just this turn
 * @param both their covariances together
 */
record DiscriminatingSighting(AxisOffset apart, AxisOffset apartInDrifts, OffsetCovariance both) {
    // Nearer than that they are one place.
    private static final double DIFFERENT_SQUARED_SIGMAS = 1;
    private static final double DECIDES = Odds.HUNDRED_TO_ONE;
    // A sighting that separates two places by less than one sigma would have to be repeated ten times to decide.
    private static final double SHOWS = 1;
    private static final double WORTH_DECIDING = 0.05;
    private static final Set<SightingKind> DRIFTS =
            EnumSet.of(SightingKind.DRIFT_ON_MERIDIAN, SightingKind.DRIFT_EAST_OR_WEST);

    /**
     * Those that are in dispute, the likelier ones first; none if the explanations of a fix agree, or differ about the
     * latitude.
     */
    private static Stream<DiscriminatingSighting> of(Fix fix) {
        if (!(fix instanceof Fix.Dubious dubious) || dubious.dispute() != Fix.Dispute.THE_AXIS) {
            return Stream.empty();
        }
        Explanation likeliest = fix.explanations().get(0);
        Angle latitude = likeliest.state().site().latitude();
        return fix.explanations().stream()
                .filter(other -> other.weight() > WORTH_DECIDING)
                .filter(other -> other.state().site().latitude().equals(latitude))
                .map(other -> of(likeliest, other, fix.state()))
                .filter(two -> two.both().normalisedSquare(two.apart()) > DIFFERENT_SQUARED_SIGMAS);
    }

    private static DiscriminatingSighting of(Explanation likeliest, Explanation other, AxisState told) {
        return new DiscriminatingSighting(
                other.state().offset().minus(likeliest.state().offset()),
                inDrifts(other, told).minus(inDrifts(likeliest, told)),
                likeliest.state().offsetCovariance().plus(other.state().offsetCovariance()));
    }

    /** Where drifts would put the axis, read at face value, if this explanation is true. */
    private static AxisOffset inDrifts(Explanation explanation, AxisState told) {
        double back = explanation
                .mistake()
                .map(mistake -> hourAngleLater(mistake, told).negated().radians())
                .orElse(0.0);
        double east = explanation.state().offset().east().radians();
        double up = explanation.state().offset().up().radians();
        return new AxisOffset(
                new Angle(east * Math.cos(back) - up * Math.sin(back)),
                new Angle(east * Math.sin(back) + up * Math.cos(back)));
    }

    /** By how much all true hour angles exceed those computed from the entries. */
    private static Angle hourAngleLater(Mistake mistake, AxisState told) {
        if (mistake instanceof Mistake.ClockWrong clock) {
            return SiderealRate.during(clock.correction().toMillis() / 1000.0);
        }
        return mistake instanceof Mistake.SiteWrong site
                ? site.meant().longitude().minus(told.site().longitude())
                : Angle.ZERO;
    }

    /** Whether no sighting shows any difference between places in dispute: then it takes a turn of the screws to show one. */
    static boolean areBeyond(List<Candidate> candidates, Fix fix) {
        List<DiscriminatingSighting> disputes = of(fix).toList();
        return !disputes.isEmpty() && disputes.stream().noneMatch(two -> two.isShownBy(candidates));
    }

    /**
     * Those candidates that decide between two places in dispute, or come half as near to it as the best; all of them where
     * there is no such dispute.
     */
    static List<Candidate> settling(List<Candidate> candidates, Fix fix) {
        Optional<DiscriminatingSighting> dispute =
                of(fix).filter(two -> two.isShownBy(candidates)).findFirst();
        return dispute.map(two -> two.decided(candidates)).orElse(candidates);
    }

    private List<Candidate> decided(List<Candidate> candidates) {
        double best = best(candidates);
        return candidates.stream()
                .filter(candidate -> tellsApart(candidate) >= Math.min(DECIDES, best / 2))
                .toList();
    }

    private boolean isShownBy(List<Candidate> candidates) {
        return best(candidates) > SHOWS;
    }

    private double best(List<Candidate> candidates) {
        return candidates.stream().mapToDouble(this::tellsApart).max().orElse(0);
    }

    private double tellsApart(Candidate candidate) {
        return candidate.tells().separation(DRIFTS.contains(candidate.kind()) ? apartInDrifts : apart, both);
    }
}
