package polewright.alignment.fix;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hipparchus.linear.LUDecomposition;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.sky.angle.Angle;

/**
 * When sightings before and after a turn do not fit together, the screws may do less or more than their owner, or earlier
 * nights, make believe, and the base may lean more. That is no reason to disbelieve anybody's eyes.
 */
final class DoubtedScrews {
    private static final double WORSE_BY = 3;
    // As far as a rig may be written.
    private static final double WORST_GAIN_SIGMA = 2;
    private static final Angle WORST_LEVEL = Angle.ofDegrees(20);

    private DoubtedScrews() {}

    /**
     * The night as told by screws known three times worse, or by a rig whose earlier nights are forgotten (it may have been
     * taken apart since), if that is the likelier way; or else as it was.
     */
    static Interpretation considered(Rig rig, List<Step> steps, Interpretation asTold) {
        if (asTold.isUnremarkable() || steps.stream().noneMatch(Step.Turned.class::isInstance)) {
            return asTold;
        }
        return doubted(rig)
                .map(asTold.smoother()::with)
                .map(other -> Contradictions.weigh(other, surcharge(asTold.smoother(), other)))
                .filter(account -> account.cost() < asTold.cost() && account.doScrewsTurnTheAxis())
                .min(Comparator.comparingDouble(Interpretation::cost))
                .orElse(asTold);
    }

    /** A Gaussian three times as wide is three times as low: 2 ln 3 for each of the figures of the screws that are so. */
    static double surcharge(NightSmoother asTold, NightSmoother doubted) {
        return Math.abs(Math.log(spread(doubted) / spread(asTold)));
    }

    private static double spread(NightSmoother smoother) {
        int first = AxisState.AZIMUTH_GAIN;
        int last = AxisState.SIZE - 1;
        return new LUDecomposition(smoother.prior().covariance().getSubMatrix(first, last, first, last))
                .getDeterminant();
    }

    private static Stream<Rig> doubted(Rig rig) {
        if (rig.experience().isEmpty()) {
            return Stream.of(worse(rig));
        }
        Rig forgetful = rig.withExperience(Optional.empty());
        return Stream.of(worse(rig), forgetful, worse(forgetful));
    }

    /** The same rig with screws and base known three times worse. */
    static Rig worse(Rig rig) {
        return worse(rig, WORSE_BY);
    }

    /** The same rig with screws and base known so many times worse. */
    static Rig worse(Rig rig, double times) {
        Angle level = rig.levelSigma().times(times);
        return rig.withScrews(
                        worse(rig.azimuthScrew(), times),
                        worse(rig.altitudeScrew(), times),
                        level.compareTo(WORST_LEVEL) > 0 ? WORST_LEVEL : level)
                .withExperience(rig.experience().map(learned -> learned.doubtingScrews(times)));
    }

    private static Screw worse(Screw screw, double times) {
        return screw.knownTo(Math.min(WORST_GAIN_SIGMA, times * screw.relativeGainSigma()));
    }
}
