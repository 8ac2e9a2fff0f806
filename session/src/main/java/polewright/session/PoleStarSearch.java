package polewright.session;

import java.util.Optional;
import polewright.alignment.advice.AdvisedStar;
import polewright.mount.AxisPointing;
import polewright.mount.OffsetCovariance;
import polewright.sky.angle.Angle;
import polewright.sky.place.ObservingMoment;
import polewright.sky.time.SkyTime;

/**
 * Where to look for a pole star outside the field, relative to the direction of a tube in its home position.
 *
 * @param star the pole star
 * @param right distance to the right on the sky for an observer facing the pole; negative to the left
 * @param up distance upward; negative downward
 * @param sigma uncertainty in the worse direction
 */
public record PoleStarSearch(AdvisedStar star, Angle right, Angle up, Angle sigma) {
    /** From the fix of a night; empty if no pole star is up. */
    public static Optional<PoleStarSearch> of(NightState night) {
        ObservingMoment moment = ObservingMoment.of(
                night.begun().site(), SkyTime.of(night.now()), night.begun().weather());
        return BrightStars.poleStar(moment).map(star -> {
            AxisPointing axis = night.fix().state().axis();
            OffsetCovariance covariance = night.fix().state().offsetCovariance();
            Angle azimuth = star.direction().azimuth().minus(axis.azimuth()).wrappedSigned();
            return new PoleStarSearch(
                    star,
                    azimuth.times(star.direction().altitude().cos()),
                    star.direction().altitude().minus(axis.altitude()),
                    covariance.largestSigma());
        });
    }
}
