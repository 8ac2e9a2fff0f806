package polewright.mount.rig;

import java.util.Optional;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/**
 * Whether the tube clears the fork's arms and base.
 *
 * <p>All lengths are from the declination axis. The base is a plane perpendicular to the polar axis at the arms' depth
 * D; what is behind the tube (or ahead of it) is a cylinder about the tube's axis, of length L and radius r. At a
 * declination δ toward the elevated pole, the rim of its end is L sin δ + r cos δ closer to the base than the
 * declination axis is, so it clears while R sin(δ + ε) &lt; D with R = √(L² + r²) and ε = atan(r / L). At declinations
 * beyond the equator the same holds for the front. On an upright fork, read altitude for declination. The rim of the
 * end is always the closest part, and the tube can only come from the equator, so a gap nearer the pole cannot be used.
 * Derived here.
 *
 * @param armDepthMm D, from the declination axis to the base
 * @param behindMm from the declination axis to the end of whatever is behind the tube: focuser, diagonal, camera
 * @param aheadMm from the declination axis to the front of tube or dew cap
 * @param backRadiusMm half the width of what is behind
 * @param frontRadiusMm half the width of the front
 */
public record ForkClearance(
        double armDepthMm, double behindMm, double aheadMm, double backRadiusMm, double frontRadiusMm) {
    private static final double LONGEST_MM = 10_000;

    public ForkClearance {
        require("depth of the fork's arms", armDepthMm, 1);
        require("length behind the declination axis", behindMm, 0);
        require("length ahead of the declination axis", aheadMm, 0);
        require("half width behind", backRadiusMm, 0);
        require("half width of the front", frontRadiusMm, 0);
        if (Math.max(backRadiusMm, frontRadiusMm) >= armDepthMm) {
            throw new InputRefused(
                    "arms " + PlainNumber.asTyped(armDepthMm) + " mm deep cannot hold a tube of "
                            + PlainNumber.asTyped(Math.max(backRadiusMm, frontRadiusMm)) + " mm half width",
                    "measure from the declination axis to the fork's base");
        }
    }

    /** The largest declination toward the elevated pole; empty if there is no limit. */
    public Optional<Angle> towardPole() {
        return farthest(behindMm, backRadiusMm);
    }

    /** The largest declination beyond the equator, toward the other pole; empty if there is no limit. */
    public Optional<Angle> beyondEquator() {
        return farthest(aheadMm, frontRadiusMm);
    }

    private Optional<Angle> farthest(double lengthMm, double radiusMm) {
        double rim = Math.hypot(lengthMm, radiusMm);
        if (rim <= armDepthMm) {
            return Optional.empty();
        }
        double farthest = Math.asin(armDepthMm / rim) - Math.atan2(radiusMm, lengthMm);
        return farthest >= Math.PI / 2 ? Optional.empty() : Optional.of(new Angle(Math.max(0, farthest)));
    }

    private static void require(String what, double mm, double least) {
        if (!(mm >= least && mm <= LONGEST_MM)) {
            throw new InputRefused(
                    "a " + what + " of " + PlainNumber.asTyped(mm) + " mm is outside " + PlainNumber.of(least)
                            + " to 10000",
                    "correct the rig file");
        }
    }
}
