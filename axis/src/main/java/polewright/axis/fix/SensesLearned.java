package polewright.axis.fix;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import polewright.axis.rig.Rig;

/**
 * Learns which way the screws of this mount go from the turns of the night. If the sense is only assumed, either is equally
 * likely. A rig the owner described is seldom wrong about it, so overruling it takes two turns and stronger evidence.
 */
final class SensesLearned {
    private static final double AGAINST_A_RIG_THAT_WAS_TOLD = 2 * Contradictions.HUNDRED_TO_ONE;
    private static final int TURNS_AGAINST_A_RIG_THAT_WAS_TOLD = 2;

    private SensesLearned() {}

    /** The night by a rig with one screw or both going the other way, if that is the likelier by odds of a hundred to one. */
    static Account considered(List<Step> steps, Account asTold) {
        if (asTold.isUnremarkable()) {
            return asTold;
        }
        Rig rig = asTold.smoother().rig();
        boolean isAssumed = rig.hasAssumedScrews();
        int least = isAssumed ? 1 : TURNS_AGAINST_A_RIG_THAT_WAS_TOLD;
        double worthIt = isAssumed ? Contradictions.HUNDRED_TO_ONE : AGAINST_A_RIG_THAT_WAS_TOLD;
        boolean azimuth = turns(steps).filter(t -> !t.azimuth().isNone()).count() >= least;
        boolean altitude = turns(steps).filter(t -> !t.altitude().isNone()).count() >= least;
        if (!isAssumed && !asTold.mayBecomeUnremarkable()) {
            return asTold;
        }
        List<Rig> others = new ArrayList<>();
        if (azimuth) {
            others.add(reversed(rig, true, false));
        }
        if (altitude) {
            others.add(reversed(rig, false, true));
        }
        if (azimuth && altitude) {
            others.add(reversed(rig, true, true));
        }
        double most = asTold.cost() - worthIt;
        return others.stream()
                .map(other -> asTold.smoother().with(other))
                // Against a rig that was told it has to explain everything.
                .flatMap(other -> (isAssumed
                                ? Contradictions.weighUnless(other, account -> account.leastCost() >= most)
                                : Contradictions.believingAll(other))
                        .stream())
                .filter(account -> account.cost() < most)
                .min(Comparator.comparingDouble(Account::cost))
                .orElse(asTold);
    }

    private static Stream<Step.Turned> turns(List<Step> steps) {
        return steps.stream().filter(Step.Turned.class::isInstance).map(Step.Turned.class::cast);
    }

    private static Rig reversed(Rig rig, boolean azimuth, boolean altitude) {
        return rig.withScrews(
                azimuth ? rig.azimuthScrew().reversed() : rig.azimuthScrew(),
                altitude ? rig.altitudeScrew().reversed() : rig.altitudeScrew(),
                rig.levelSigma());
    }
}
