package polewright.alignment.advice;

import polewright.alignment.allowance.Allowance;
import polewright.alignment.allowance.ZoneProbability;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;
import polewright.mount.rig.Rig;

/**
 * What becomes of an axis on loose clamps when they are tightened: it shifts as it usually does, and scatters about that.
 * Whoever turns the screws, by the advice or by frames as they come, has to look ahead to it.
 */
public record Tightening(Allowance allowance, Rig rig) {
    private static final OffsetCovariance EXACTLY = new OffsetCovariance(0, 0, 0);

    /** Where to turn the axis to: tightening then takes it to the best aim. */
    public AxisOffset goal() {
        return allowance.bestAim().minus(rig.usualClampShift());
    }

    /** Probability of being within the allowance once they are tight, with the axis there, known so well, while loose. */
    public double probability(AxisOffset loose, OffsetCovariance covariance) {
        return ZoneProbability.of(allowance, loose.plus(rig.usualClampShift()), covariance.plus(scatter()));
    }

    /** The probability to ask for before tightening: no more than the clamps leave of an axis that is just at the goal. */
    public double enough() {
        return Adviser.ENOUGH * probability(goal(), EXACTLY);
    }

    /** Whether the axis may be left there, known so well, and the clamps tightened. */
    public boolean isEnough(AxisOffset loose, OffsetCovariance covariance) {
        return probability(loose, covariance) >= enough();
    }

    OffsetCovariance scatter() {
        double sigma = rig.clampingSigma().arcminutes();
        return new OffsetCovariance(sigma * sigma, 0, sigma * sigma);
    }
}
