package polewright.mount.rig;

import java.util.Optional;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/**
 * Limits to the travel of a mount.
 *
 * @param eastLimit hour angle at which cables or a stop end the travel to the east, −180° to 0
 * @param westLimit the same to the west, 0 to 180°
 * @param lowestAltitude the owner does not observe below it: extinction, neighbours' lamps, the wedge's own plates
 * @param fork clearance of the tube in the fork; empty if not measured, and on mounts without a fork
 */
public record TravelLimits(Angle eastLimit, Angle westLimit, Angle lowestAltitude, Optional<ForkClearance> fork) {
    /** Only the lowest altitude at which most people observe (common practice). */
    public static final TravelLimits USUAL =
            new TravelLimits(Angle.HALF_TURN.negated(), Angle.HALF_TURN, Angle.ofDegrees(10), Optional.empty());

    public TravelLimits {
        if (!(eastLimit.degrees() >= -180.000001 && eastLimit.degrees() <= 0)) {
            throw new InputRefused(
                    "an eastern limit at hour angle " + PlainNumber.asTyped(eastLimit.degrees())
                            + " degrees is outside -180 to 0",
                    "hour angles east of the meridian are negative");
        }
        if (!(westLimit.degrees() >= 0 && westLimit.degrees() <= 180.000001)) {
            throw new InputRefused(
                    "a western limit at hour angle " + PlainNumber.asTyped(westLimit.degrees())
                            + " degrees is outside 0 to 180",
                    "hour angles west of the meridian are positive");
        }
        if (!(lowestAltitude.degrees() >= 0 && lowestAltitude.degrees() <= 80)) {
            throw new InputRefused(
                    "a lowest altitude of " + PlainNumber.asTyped(lowestAltitude.degrees())
                            + " degrees is outside 0 to 80",
                    "give the lowest altitude you observe at; 10 is usual");
        }
    }
}
