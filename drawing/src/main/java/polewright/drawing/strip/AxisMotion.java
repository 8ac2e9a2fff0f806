package polewright.drawing.strip;

import java.time.Instant;
import java.util.List;

/**
 * How far the axis moved in one direction from night to night, without deliberate turns.
 *
 * @param nights in time order
 * @param trend points of the fitted line; empty without a fit
 */
public record AxisMotion(List<Night> nights, List<Spot> trend) {
    public AxisMotion {
        nights = List.copyOf(nights);
        trend = List.copyOf(trend);
    }

    /**
     * A night.
     *
     * @param arcmin cumulative movement since the first
     * @param sigmaArcmin 1 sigma of the drift that led there; 0 at the start of a sequence
     * @param isJoined whether that drift is known
     */
    public record Night(Instant at, double arcmin, double sigmaArcmin, boolean isJoined) {}

    /** A point on the line. */
    public record Spot(Instant at, double arcmin) {}

    /** The lower end of the lowest error bar, arcminutes. */
    double lowest() {
        return nights.stream()
                .mapToDouble(night -> night.arcmin() - night.sigmaArcmin())
                .min()
                .orElse(0);
    }

    /** The upper end of the highest error bar, arcminutes. */
    double highest() {
        return nights.stream()
                .mapToDouble(night -> night.arcmin() + night.sigmaArcmin())
                .max()
                .orElse(0);
    }
}
