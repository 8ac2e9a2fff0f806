package polewright.alignment.fix;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import polewright.sky.angle.Angle;

/**
 * The stands of a night with the axis in each, as the whole night tells.
 *
 * @param states smoothed
 * @param forward the pass forward that they come from
 * @param rests for each stand, what its sightings and all that follows have to say on what went before
 * @param chiSquared what the sightings that were believed, the turns and the prior have to be forgiven
 * @param settled whether the passes came to rest on one answer
 */
record SmoothedNight(
        List<AxisState> states, ForwardPass forward, List<Adjoint> rests, double chiSquared, boolean settled) {
    private static final double ARCMIN_PER_RAD = new Angle(1).arcminutes();

    AxisState last() {
        return states.get(states.size() - 1);
    }

    List<LinearisationPoint> spots() {
        return states.stream().map(LinearisationPoint::of).toList();
    }

    /** How far the axis went at each shift among these events, as the whole night tells. */
    List<Moved> shifts(Predicate<Step> among) {
        List<Moved> shifts = new ArrayList<>();
        List<StationaryInterval> stands = forward.stands();
        for (int i = 1; i < stands.size(); i++) {
            if (stands.get(i).movedBy().orElse(null) instanceof Step.Shifted shifted && among.test(shifted)) {
                RealMatrix link = SmoothingGain.of(
                                forward.motions().get(i), forward.predicted().get(i))
                        .link(states.get(i));
                shifts.add(Moved.between(states.get(i - 1), states.get(i), link, shifted));
            }
        }
        return shifts;
    }

    /**
     * What it costs to assume unlogged turns, in units of χ²: a size that might have been anything within its
     * prior is as much less likely as the night narrows it down.
     */
    double costOfUnknownSize(Step.TurnedUnlogged turned) {
        List<StationaryInterval> stands = forward.stands();
        for (int i = 1; i < stands.size(); i++) {
            if (stands.get(i).movedBy().filter(turned::equals).isPresent()) {
                return costOfUnknownSize(turned, i);
            }
        }
        throw new IllegalArgumentException("no unlogged turns after event " + turned.seq());
    }

    private double costOfUnknownSize(Step.TurnedUnlogged turned, int stand) {
        Motion motion = forward.motions().get(stand);
        RealMatrix link =
                SmoothingGain.of(motion, forward.predicted().get(stand)).link(states.get(stand));
        RealMatrix spread = Moved.spread(states.get(stand - 1), states.get(stand), link);
        double azimuth = spread.getEntry(AxisState.AZIMUTH, AxisState.AZIMUTH);
        double altitude = spread.getEntry(AxisState.ALTITUDE, AxisState.ALTITUDE);
        double both = spread.getEntry(AxisState.AZIMUTH, AxisState.ALTITUDE);
        double narrowed = turned.isOfBoth()
                ? motion.azimuthVariance() * motion.altitudeVariance() / (azimuth * altitude - both * both)
                : turned.azimuthSigma() > 0 ? motion.azimuthVariance() / azimuth : motion.altitudeVariance() / altitude;
        return Math.max(0, Math.log(narrowed));
    }

    /** What χ² would gain, sightings taken as straight, if this move might have taken the axis so far besides, 1 sigma. */
    double gainOfFreedom(Step move, Angle sigma) {
        for (int i = 1; i < rests.size(); i++) {
            if (forward.stands().get(i).movedBy().filter(move::equals).isPresent()) {
                double altitude = sigma.radians();
                double azimuth = altitude / Motion.eastPerAzimuth(last().site());
                return rests.get(i).gainOfFreedom(azimuth * azimuth, altitude * altitude);
            }
        }
        throw new IllegalArgumentException("event " + move.seq() + " moved nothing");
    }

    /** How far the axis went in azimuth and altitude at the move of this event, as the whole night tells. */
    AxisState.Turns wentAt(long seq) {
        List<StationaryInterval> stands = forward.stands();
        for (int i = 1; i < stands.size(); i++) {
            if (stands.get(i).movedBy().filter(step -> step.seq() == seq).isPresent()) {
                RealVector went =
                        states.get(i).mean().subtract(states.get(i - 1).mean());
                return new AxisState.Turns(went.getEntry(AxisState.AZIMUTH), went.getEntry(AxisState.ALTITUDE));
            }
        }
        throw new IllegalArgumentException("event " + seq + " moved nothing");
    }

    /**
     * A shift as the whole night tells it, on the sky.
     *
     * @param eastVariance arcmin²
     * @param upVariance arcmin²
     */
    record Moved(Step.Shifted shifted, double eastArcmin, double eastVariance, double upArcmin, double upVariance) {
        /** Covariance of the move. */
        static RealMatrix spread(AxisState before, AxisState after, RealMatrix link) {
            return before.covariance().add(after.covariance()).subtract(link).subtract(link.transpose());
        }

        static Moved between(AxisState before, AxisState after, RealMatrix link, Step.Shifted shifted) {
            double eastPerAzimuth = Motion.eastPerAzimuth(before.site()) * ARCMIN_PER_RAD;
            RealVector difference = after.mean().subtract(before.mean());
            RealMatrix spread = spread(before, after, link);
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
