package polewright.alignment.advice;

import java.util.Comparator;
import java.util.Optional;
import polewright.alignment.fix.AxisState;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;

/**
 * One more round of adjustment: possibly a sighting, then the screws, the clamps, and a confirming sighting.
 *
 * @param prospect where it would leave the axis
 * @param probabilityAfter probability of being in the zone afterwards
 */
record AdjustmentRound(Prospect prospect, double probabilityAfter) {
    private static final double TURNING_MINUTES = 3;
    private static final double CLAMPING_MINUTES = 2;
    // The gain in probability per minute that makes a sighting before turning worth its time.
    private static final double WORTH_A_MINUTE = 0.002;

    /** The round with the best probability for its duration. */
    static AdjustmentRound of(Situation situation) {
        AxisState state = situation.fix().state();
        Outlook outlook = new Outlook(situation);
        AxisOffset mean = state.offset();
        OffsetCovariance now = state.offsetCovariance();
        double confirming = SightingPlanner.candidates(situation, now)
                .filter(c -> c.information().narrowing(now) > 0)
                .mapToDouble(Candidate::minutes)
                .min()
                .orElse(0);
        double fixed = TURNING_MINUTES + CLAMPING_MINUTES + confirming;
        AdjustmentRound atOnce = round(situation, outlook, mean, now, fixed);
        Optional<AdjustmentRound> onBetterKnowledge = SightingPlanner.candidates(situation, now)
                .map(c -> round(situation, outlook, mean, c.information().after(now), fixed + c.minutes()))
                .max(Comparator.comparingDouble(AdjustmentRound::worth));
        return onBetterKnowledge.filter(r -> r.worth() > atOnce.worth()).orElse(atOnce);
    }

    private static AdjustmentRound round(
            Situation situation, Outlook outlook, AxisOffset mean, OffsetCovariance known, double minutes) {
        OffsetCovariance there = outlook.covarianceIfTurned(mean, known);
        return new AdjustmentRound(
                new Prospect(situation.allowance().bestAim(), there, minutes), outlook.ifTurned(mean, known));
    }

    private double worth() {
        return probabilityAfter - WORTH_A_MINUTE * prospect.minutes();
    }
}
