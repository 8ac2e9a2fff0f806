package polewright.axis.pointing;

import java.util.EnumMap;
import java.util.Map;
import polewright.axis.AxisOffset;
import polewright.sky.angle.Angle;

/**
 * How much of each term there is.
 *
 * @param angles a term that is missing is 0
 */
public record TermValues(Map<PointingTerm, Angle> angles) {
    public static final TermValues NONE = new TermValues(Map.of());

    public TermValues {
        angles = Map.copyOf(angles);
    }

    public Angle of(PointingTerm term) {
        return angles.getOrDefault(term, Angle.ZERO);
    }

    /** The same with another value of one term. */
    public TermValues with(PointingTerm term, Angle angle) {
        Map<PointingTerm, Angle> changed = new EnumMap<>(PointingTerm.class);
        changed.putAll(angles);
        changed.put(term, angle);
        return new TermValues(changed);
    }

    public AxisOffset axisOffset() {
        return new AxisOffset(of(PointingTerm.AXIS_EAST), of(PointingTerm.AXIS_UP));
    }
}
