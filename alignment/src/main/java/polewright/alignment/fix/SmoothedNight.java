package polewright.alignment.fix;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import polewright.sky.angle.Angle;

/**
 * The smoothed solution of a night: the state in each stationary interval given all sightings.
 *
 * @param states smoothed, one per interval
 * @param forward the forward pass that they come from
 * @param adjoints for each interval, the information of its sightings and all later ones about the state before them
 * @param chiSquared of the believed sightings, the turns and the prior
 * @param converged whether the iteration converged
 */
record SmoothedNight(
        List<AxisState> states, ForwardPass forward, List<Adjoint> adjoints, double chiSquared, boolean converged) {
    private static final double ARCMIN_PER_RAD = new Angle(1).arcminutes();

    AxisState last() {
        return states.get(states.size() - 1);
    }

    List<LinearisationPoint> points() {
        return states.stream().map(LinearisationPoint::of).toList();
    }

    /** The smoothed displacement of the axis at each of the selected shifts. */
    List<Moved> shifts(Predicate<Step> among) {
        List<Moved> shifts = new ArrayList<>();
        List<StationaryInterval> intervals = forward.intervals();
        for (int i = 1; i < intervals.size(); i++) {
            if (intervals.get(i).movedBy().orElse(null) instanceof Step.Shifted shifted && among.test(shifted)) {
                RealMatrix crossCovariance = SmoothingGain.of(
                                forward.motions().get(i), forward.predicted().get(i))
                        .crossCovariance(states.get(i));
                shifts.add(Moved.between(states.get(i - 1), states.get(i), crossCovariance, shifted));
            }
        }
        return shifts;
    }

    /**
     * The cost of assuming unlogged turns, in units of χ²: the Occam factor for an unknown size, from the ratio of its
     * prior to its posterior variance.
     */
    double costOfUnknownSize(Step.TurnedUnlogged turned) {
        List<StationaryInterval> intervals = forward.intervals();
        for (int i = 1; i < intervals.size(); i++) {
            if (intervals.get(i).movedBy().filter(turned::equals).isPresent()) {
                return costOfUnknownSize(turned, i);
            }
        }
        throw new IllegalArgumentException("no unlogged turns after event " + turned.seq());
    }

    private double costOfUnknownSize(Step.TurnedUnlogged turned, int interval) {
        Motion motion = forward.motions().get(interval);
        RealMatrix crossCovariance =
                SmoothingGain.of(motion, forward.predicted().get(interval)).crossCovariance(states.get(interval));
        RealMatrix spread = Moved.spread(states.get(interval - 1), states.get(interval), crossCovariance);
        double azimuth = spread.getEntry(AxisState.AZIMUTH, AxisState.AZIMUTH);
        double altitude = spread.getEntry(AxisState.ALTITUDE, AxisState.ALTITUDE);
        double both = spread.getEntry(AxisState.AZIMUTH, AxisState.ALTITUDE);
        double narrowed = turned.isOfBoth()
                ? motion.azimuthVariance() * motion.altitudeVariance() / (azimuth * altitude - both * both)
                : turned.azimuthSigma() > 0 ? motion.azimuthVariance() / azimuth : motion.altitudeVariance() / altitude;
        return Math.max(0, Math.log(narrowed));
    }

    /**
     * The reduction of χ², with sightings linearised, if this move had an additional free displacement of this sigma.
     */
    double gainOfFreedom(Step move, Angle sigma) {
        for (int i = 1; i < adjoints.size(); i++) {
            if (forward.intervals().get(i).movedBy().filter(move::equals).isPresent()) {
                double altitude = sigma.radians();
                double azimuth = altitude / Motion.eastPerAzimuth(last().site());
                return adjoints.get(i).gainOfFreedom(azimuth * azimuth, altitude * altitude);
            }
        }
        throw new IllegalArgumentException("event " + move.seq() + " moved nothing");
    }

    /** The smoothed displacement in azimuth and altitude at the move of this event, radians. */
    AxisState.Turns wentAt(long seq) {
        List<StationaryInterval> intervals = forward.intervals();
        for (int i = 1; i < intervals.size(); i++) {
            if (intervals.get(i).movedBy().filter(step -> step.seq() == seq).isPresent()) {
                RealVector went =
                        states.get(i).mean().subtract(states.get(i - 1).mean());
                return new AxisState.Turns(went.getEntry(AxisState.AZIMUTH), went.getEntry(AxisState.ALTITUDE));
            }
        }
        throw new IllegalArgumentException("event " + seq + " moved nothing");
    }

    /**
     * A smoothed shift on the sky.
     *
     * @param eastVariance arcmin²
     * @param upVariance arcmin²
     */
    record Moved(Step.Shifted shifted, double eastArcmin, double eastVariance, double upArcmin, double upVariance) {
        /** Covariance of the displacement. */
        static RealMatrix spread(AxisState before, AxisState after, RealMatrix crossCovariance) {
            return before.covariance()
                    .add(after.covariance())
                    .subtract(crossCovariance)
                    .subtract(crossCovariance.transpose());
        }

        static Moved between(AxisState before, AxisState after, RealMatrix crossCovariance, Step.Shifted shifted) {
            double eastPerAzimuth = Motion.eastPerAzimuth(before.site()) * ARCMIN_PER_RAD;
            RealVector difference = after.mean().subtract(before.mean());
            RealMatrix spread = spread(before, after, crossCovariance);
            int azimuth = AxisState.AZIMUTH;
            int altitude = AxisState.ALTITUDE;
            return new Moved(
                    shifted,
                    eastPerAzimuth * difference.getEntry(azimuth),
                    eastPerAzimuth * eastPerAzimuth * spread.getEntry(azimuth, azimuth),
                    ARCMIN_PER_RAD * difference.getEntry(altitude),
                    ARCMIN_PER_RAD * ARCMIN_PER_RAD * spread.getEntry(altitude, altitude));
        }
    }
}
