package polewright.alignment.advice;

import polewright.alignment.allowance.Allowance;
import polewright.alignment.allowance.ZoneProbability;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;
import polewright.mount.rig.Rig;

/**
 * The effect of tightening loose clamps: the usual shift of the axis, with a scatter about it. Turns have to anticipate
 * it, whether they follow the advice or live frames.
 */
public record Tightening(Allowance allowance, Rig rig) {
    private static final OffsetCovariance EXACTLY = new OffsetCovariance(0, 0, 0);

    /** The target for turns: tightening then moves the axis to the best aim. */
    public AxisOffset goal() {
        return allowance.bestAim().minus(rig.usualClampShift());
    }

    /**
     * Probability of being within the allowance after tightening, for an offset and covariance with the clamps loose.
     */
    public double probability(AxisOffset loose, OffsetCovariance covariance) {
        return ZoneProbability.of(allowance, loose.plus(rig.usualClampShift()), covariance.plus(scatter()));
    }

    /** The probability required before tightening: reduced to what the clamps allow for an axis exactly at the goal. */
    public double enough() {
        return Adviser.ENOUGH * probability(goal(), EXACTLY);
    }

    /** Whether an axis with this offset and covariance is good enough to tighten the clamps. */
    public boolean isEnough(AxisOffset loose, OffsetCovariance covariance) {
        return probability(loose, covariance) >= enough();
    }

    OffsetCovariance scatter() {
        double sigma = rig.clampingSigma().arcminutes();
        return new OffsetCovariance(sigma * sigma, 0, sigma * sigma);
    }
}
