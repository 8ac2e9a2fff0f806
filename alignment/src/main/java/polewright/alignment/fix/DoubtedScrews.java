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
 * Considers whether the rig description is at fault rather than the sightings. When sightings before and after a turn
 * disagree, the screws may move the axis less or more than the owner or earlier nights say, and the base may lean more.
 */
final class DoubtedScrews {
    private static final double WORSE_BY = 3;
    // The largest values that a rig description may have.
    private static final double WORST_GAIN_SIGMA = 2;
    private static final Angle WORST_LEVEL = Angle.ofDegrees(20);

    private DoubtedScrews() {}

    /**
     * The night with screw sigmas three times as large, or without the experience of earlier nights (the rig may have
     * been taken apart since), if that is more likely; otherwise unchanged.
     */
    static Interpretation considered(Rig rig, List<Step> steps, Interpretation asEntered) {
        if (asEntered.isUnremarkable() || steps.stream().noneMatch(Step.Turned.class::isInstance)) {
            return asEntered;
        }
        return doubted(rig)
                .map(asEntered.smoother()::with)
                .map(other -> Contradictions.weigh(other, surcharge(asEntered.smoother(), other)))
                .filter(interpretation ->
                        interpretation.cost() < asEntered.cost() && interpretation.doScrewsTurnTheAxis())
                .min(Comparator.comparingDouble(Interpretation::cost))
                .orElse(asEntered);
    }

    /** A Gaussian three times as wide has a third of the peak density: a cost of 2 ln 3 for each screw parameter. */
    static double surcharge(NightSmoother asEntered, NightSmoother doubted) {
        return Math.abs(Math.log(spread(doubted) / spread(asEntered)));
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
        Rig withoutExperience = rig.withExperience(Optional.empty());
        return Stream.of(worse(rig), withoutExperience, worse(withoutExperience));
    }

    /** The same rig with the sigmas of screws and base three times as large. */
    static Rig worse(Rig rig) {
        return worse(rig, WORSE_BY);
    }

    /** The same rig with the sigmas of screws and base multiplied by a factor. */
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
