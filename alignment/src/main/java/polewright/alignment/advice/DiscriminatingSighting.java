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
import polewright.mount.EvidenceThreshold;
import polewright.mount.OffsetCovariance;
import polewright.sky.angle.Angle;
import polewright.sky.time.SiderealRate;

/**
 * Two disputed places of the axis, the most likely and another, and the sightings that can discriminate between them.
 *
 * @param difference from the most likely place to the other
 * @param differenceInDrifts the same difference as drifts show it. A wrong clock or longitude changes all hour angles
 *     equally, which rotates the offset from drifts about the pole. No drift can discriminate between places that
 *     differ by just this rotation
 * @param both the sum of their covariances
 */
record DiscriminatingSighting(AxisOffset difference, AxisOffset differenceInDrifts, OffsetCovariance both) {
    // Closer than this they count as one place.
    private static final double DIFFERENT_SQUARED_SIGMAS = 1;
    private static final double DECIDES = EvidenceThreshold.HUNDRED_TO_ONE;
    // A sighting that separates two places by less than one sigma would have to be repeated ten times to decide.
    private static final double SHOWS = 1;
    private static final double WORTH_DECIDING = 0.05;
    private static final Set<SightingKind> DRIFTS =
            EnumSet.of(SightingKind.DRIFT_ON_MERIDIAN, SightingKind.DRIFT_EAST_OR_WEST);

    /**
     * The disputed pairs, the most likely alternatives first; empty if the explanations agree or differ about the
     * latitude.
     */
    private static Stream<DiscriminatingSighting> of(Fix fix) {
        if (!(fix instanceof Fix.Dubious dubious) || dubious.dispute() != Fix.Dispute.THE_AXIS) {
            return Stream.empty();
        }
        Explanation mostLikely = fix.explanations().get(0);
        Angle latitude = mostLikely.state().site().latitude();
        return fix.explanations().stream()
                .filter(other -> other.weight() > WORTH_DECIDING)
                .filter(other -> other.state().site().latitude().equals(latitude))
                .map(other -> of(mostLikely, other, fix.state()))
                .filter(two -> two.both().normalisedSquare(two.difference()) > DIFFERENT_SQUARED_SIGMAS);
    }

    private static DiscriminatingSighting of(Explanation mostLikely, Explanation other, AxisState fixState) {
        return new DiscriminatingSighting(
                other.state().offset().minus(mostLikely.state().offset()),
                inDrifts(other, fixState).minus(inDrifts(mostLikely, fixState)),
                mostLikely.state().offsetCovariance().plus(other.state().offsetCovariance()));
    }

    /** Where drifts, taken at face value, would put the axis if this explanation is true. */
    private static AxisOffset inDrifts(Explanation explanation, AxisState fixState) {
        double back = explanation
                .mistake()
                .map(mistake -> hourAngleLater(mistake, fixState).negated().radians())
                .orElse(0.0);
        double east = explanation.state().offset().east().radians();
        double up = explanation.state().offset().up().radians();
        return new AxisOffset(
                new Angle(east * Math.cos(back) - up * Math.sin(back)),
                new Angle(east * Math.sin(back) + up * Math.cos(back)));
    }

    /** By how much all true hour angles exceed those computed from the entries. */
    private static Angle hourAngleLater(Mistake mistake, AxisState fixState) {
        if (mistake instanceof Mistake.ClockWrong clock) {
            return SiderealRate.during(clock.correction().toMillis() / 1000.0);
        }
        return mistake instanceof Mistake.SiteWrong site
                ? site.meant().longitude().minus(fixState.site().longitude())
                : Angle.ZERO;
    }

    /** Whether no sighting can discriminate between the disputed places, so that only a turn of the screws can. */
    static boolean areBeyond(List<Candidate> candidates, Fix fix) {
        List<DiscriminatingSighting> disputes = of(fix).toList();
        return !disputes.isEmpty() && disputes.stream().noneMatch(two -> two.isShownBy(candidates));
    }

    /**
     * The candidates that decide between two disputed places, or are at least half as discriminating as the best; all
     * of them if there is no dispute.
     */
    static List<Candidate> settling(List<Candidate> candidates, Fix fix) {
        Optional<DiscriminatingSighting> dispute =
                of(fix).filter(two -> two.isShownBy(candidates)).findFirst();
        return dispute.map(two -> two.decided(candidates)).orElse(candidates);
    }

    private List<Candidate> decided(List<Candidate> candidates) {
        double best = best(candidates);
        return candidates.stream()
                .filter(candidate -> separation(candidate) >= Math.min(DECIDES, best / 2))
                .toList();
    }

    private boolean isShownBy(List<Candidate> candidates) {
        return best(candidates) > SHOWS;
    }

    private double best(List<Candidate> candidates) {
        return candidates.stream().mapToDouble(this::separation).max().orElse(0);
    }

    private double separation(Candidate candidate) {
        return candidate
                .information()
                .separation(DRIFTS.contains(candidate.kind()) ? differenceInDrifts : difference, both);
    }
}
