package polewright.mount.rig;

import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;
import polewright.sky.fields.FieldReader;

/**
 * A direction in the view, as on a clock face: 12 at the top, 3 at the right.
 *
 * @param hours in (0, 12]
 */
public record ClockDirection(double hours) {
    public ClockDirection {
        if (!(hours >= 0 && hours <= 12)) {
            throw new InputRefused(
                    "clock direction " + PlainNumber.asTyped(hours) + " is outside 0 to 12",
                    "12 is the top of the view, 3 its right edge; 4.5 is half past four");
        }
        hours = hours == 0 ? 12 : hours;
    }

    public static ClockDirection ofAngle(Angle clockwiseFromTop) {
        return new ClockDirection(clockwiseFromTop.wrappedPositive().degrees() / 30);
    }

    /** From its hours. */
    public static ClockDirection read(FieldReader in, String key) {
        double hours = in.number(key);
        return in.made(() -> new ClockDirection(hours));
    }

    public Angle clockwiseFromTop() {
        return Angle.ofDegrees(hours * 30).wrappedPositive();
    }
}
