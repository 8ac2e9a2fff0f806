package polewright.axis.advice;

import polewright.axis.AxisOffset;
import polewright.axis.OffsetCovariance;
import polewright.axis.rig.Rig;

/**
 * What tightening the clamps does to the axis.
 *
 * @param shift on average, as earlier nights have taught it
 * @param scatter about that
 */
record Clamping(AxisOffset shift, OffsetCovariance scatter) {
    static Clamping of(Rig rig) {
        double sigma = rig.experience()
                .map(e -> e.clampSigma())
                .orElse(rig.clampSigma())
                .arcminutes();
        return new Clamping(
                rig.experience().map(e -> e.clampShift()).orElse(AxisOffset.NONE),
                new OffsetCovariance(sigma * sigma, 0, sigma * sigma));
    }

    /** Where the axis stands once the clamps are tight. */
    AxisOffset after(AxisOffset loose) {
        return loose.minus(before(AxisOffset.NONE));
    }

    /** Where the axis must stand loose, to stand at {@code goal} once the clamps are tight. */
    AxisOffset before(AxisOffset goal) {
        return goal.minus(shift);
    }
}
