package polewright.mount.pointing;

import java.util.EnumMap;
import java.util.Map;
import polewright.mount.AxisOffset;
import polewright.sky.angle.Angle;

/**
 * The values of the terms.
 *
 * @param angles a missing term is 0
 */
public record TermValues(Map<PointingTerm, Angle> angles) {
    public static final TermValues NONE = new TermValues(Map.of());

    public TermValues {
        angles = Map.copyOf(angles);
    }

    public Angle of(PointingTerm term) {
        return angles.getOrDefault(term, Angle.ZERO);
    }

    /** From values of all terms in their order. */
    static TermValues ofRadians(double[] radians) {
        Map<PointingTerm, Angle> angles = new EnumMap<>(PointingTerm.class);
        for (PointingTerm term : PointingTerm.values()) {
            angles.put(term, new Angle(radians[term.column()]));
        }
        return new TermValues(angles);
    }

    /** Values of all terms in their order. */
    double[] radians() {
        double[] radians = new double[PointingTerm.values().length];
        angles.forEach((term, angle) -> radians[term.column()] = angle.radians());
        return radians;
    }

    /** χ² of terms in their order, radians, relative to their usual sizes. */
    static double misfit(double[] radians) {
        double sum = 0;
        for (PointingTerm term : PointingTerm.values()) {
            double share = radians[term.column()] / term.usualSizeRad();
            sum += share * share;
        }
        return sum;
    }

    /** The same with another value for one term. */
    public TermValues with(PointingTerm term, Angle angle) {
        Map<PointingTerm, Angle> changed = new EnumMap<>(PointingTerm.class);
        changed.putAll(angles);
        changed.put(term, angle);
        return new TermValues(changed);
    }

    /** The axis offset among terms in their order, radians. */
    static AxisOffset axisOffset(double[] radians) {
        return new AxisOffset(
                new Angle(radians[PointingTerm.AXIS_EAST.column()]), new Angle(radians[PointingTerm.AXIS_UP.column()]));
    }

    public AxisOffset axisOffset() {
        return new AxisOffset(of(PointingTerm.AXIS_EAST), of(PointingTerm.AXIS_UP));
    }
}
