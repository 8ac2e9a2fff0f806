package polewright.planning.tonight;

import java.util.List;
import polewright.sky.angle.Angle;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.time.Interval;

/**
 * A schedule for the night, made by {@link NightPlanner}.
 *
 * @param slots in time order, without overlaps
 */
public record NightPlan(List<Slot> slots) {
    /** The slot of one target. */
    public record Slot(Observability showing, Interval when) {}

    public NightPlan {
        slots = List.copyOf(slots);
    }

    /** Both axes run at once: the longer of the two rotations. */
    static Angle slew(HourAnglePlace from, HourAnglePlace to) {
        double hourAngle =
                to.hourAngle().minus(from.hourAngle()).wrappedSigned().abs().radians();
        double declination = to.declination().minus(from.declination()).abs().radians();
        return new Angle(Math.max(hourAngle, declination));
    }

    /** The sum of all slews between the slots. */
    public Angle slewed() {
        double sum = 0;
        for (int i = 1; i < slots.size(); i++) {
            Slot earlier = slots.get(i - 1);
            Slot later = slots.get(i);
            sum += slew(
                            earlier.showing().path().at(earlier.when().to()),
                            later.showing().path().at(later.when().from()))
                    .radians();
        }
        return new Angle(sum);
    }
}
