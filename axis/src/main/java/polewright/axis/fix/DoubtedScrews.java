package polewright.axis.fix;

import java.util.List;
import polewright.axis.rig.Rig;
import polewright.axis.rig.Screw;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/**
 * When sightings before and after a turn do not fit together, the screws may do less or more than their owner thinks they
 * might, and the base may lean more. That is no reason to disbelieve anybody's eyes.
 */
final class DoubtedScrews {
    private static final double WORSE_BY = 3;
    // A Gaussian three times as wide is three times as low: 2 ln 3 for each of the four figures of the screws.
    private static final double SURCHARGE = 4 * 2 * Math.log(WORSE_BY);
    // As far as a rig may be written.
    private static final double WORST_GAIN_SIGMA = 2;
    private static final Angle WORST_LEVEL = Angle.ofDegrees(20);

    private DoubtedScrews() {}

    /** The night as told by screws known three times worse than the rig says, if that is the likelier way; or else as it was. */
    static Account considered(Site site, Rig rig, List<Step> steps, Account asTold) {
        if (asTold.isUnremarkable() || steps.stream().noneMatch(Step.Turned.class::isInstance)) {
            return asTold;
        }
        Account doubting = Contradictions.weigh(site, doubted(rig), steps, SURCHARGE);
        return doubting.cost() < asTold.cost() ? doubting : asTold;
    }

    private static Rig doubted(Rig rig) {
        Angle level = rig.levelSigma().times(WORSE_BY);
        return rig.withScrews(
                doubted(rig.azimuthScrew()),
                doubted(rig.altitudeScrew()),
                level.compareTo(WORST_LEVEL) > 0 ? WORST_LEVEL : level);
    }

    private static Screw doubted(Screw screw) {
        return new Screw(
                screw.geometry(),
                screw.clockwise(),
                Math.min(WORST_GAIN_SIGMA, WORSE_BY * screw.relativeGainSigma()),
                screw.handSigmaTurns(),
                screw.backlashTurns(),
                screw.finish());
    }
}
