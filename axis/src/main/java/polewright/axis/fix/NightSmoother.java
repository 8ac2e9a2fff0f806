package polewright.axis.fix;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import polewright.axis.AxisOffset;
import polewright.axis.rig.Rig;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/**
 * Least squares over a whole night.
 *
 * <p>Between two moves the axis stands still; call that a stand. Within the night the unknowns are the axis in each
 * stand and the four figures of the screws, tied together by the turns. An iterated Kalman smoother solves this: a pass
 * forward through the stands, a pass back, the sightings linearised anew about the result, until nothing moves. That is
 * Gauss–Newton on the whole night (B. M. Bell, "The iterated Kalman smoother as a Gauss–Newton method", SIAM J. Optim. 4
 * (1994) 626), at a cost that grows with the number of events and not with its cube.
 */
final class NightSmoother {
    private static final int MOST_PASSES = 25;
    private static final int FIRST_GUESS_ROUNDS = 4;
    private static final double SETTLED_RAD = 1e-10;
    private static final double ARCMIN_PER_RAD = new Angle(1).arcminutes();

    private final Site site;
    private final Rig rig;
    private final List<Stand> stands;

    NightSmoother(Site site, Rig rig, List<Step> steps) {
        this.site = site;
        this.rig = rig;
        this.stands = stands(steps);
    }

    /**
     * The stands of the night with the axis in each.
     *
     * @param links covariance of each state with the next
     * @param chiSquared what the sightings that were believed, the turns and the prior have to be forgiven
     * @param settled whether the passes came to rest on one answer
     */
    record Smoothed(
            List<AxisState> states, List<RealMatrix> links, List<Stand> stands, double chiSquared, boolean settled) {
        AxisState last() {
            return states.get(states.size() - 1);
        }

        /** How far the axis went at each shift, as the whole night tells. */
        List<Moved> shifts() {
            List<Moved> shifts = new ArrayList<>();
            for (int i = 1; i < stands.size(); i++) {
                if (stands.get(i).movedBy().orElse(null) instanceof Step.Shifted shifted) {
                    shifts.add(Moved.between(states.get(i - 1), states.get(i), links.get(i - 1), shifted));
                }
            }
            return shifts;
        }

        /** How far the axis went in azimuth and altitude at the move of this event, as the whole night tells. */
        AxisState.Turns wentAt(long seq) {
            for (int i = 1; i < stands.size(); i++) {
                if (stands.get(i).movedBy().filter(step -> step.seq() == seq).isPresent()) {
                    RealVector went =
                            states.get(i).mean().subtract(states.get(i - 1).mean());
                    return new AxisState.Turns(went.getEntry(AxisState.AZIMUTH), went.getEntry(AxisState.ALTITUDE));
                }
            }
            throw new IllegalArgumentException("event " + seq + " moved nothing");
        }

        AxisState stateFor(Step.Sighted sighted) {
            for (int i = 0; i < stands.size(); i++) {
                if (stands.get(i).sightings().contains(sighted)) {
                    return states.get(i);
                }
            }
            throw new IllegalArgumentException("event " + sighted.seq() + " is not of this night");
        }
    }

    /**
     * A shift as the whole night tells it, on the sky.
     *
     * @param eastVariance arcmin²
     * @param upVariance arcmin²
     */
    record Moved(Step.Shifted shifted, double eastArcmin, double eastVariance, double upArcmin, double upVariance) {
        static Moved between(AxisState before, AxisState after, RealMatrix link, Step.Shifted shifted) {
            double eastPerAzimuth = Motion.eastPerAzimuth(before.site()) * ARCMIN_PER_RAD;
            RealVector difference = after.mean().subtract(before.mean());
            RealMatrix spread =
                    before.covariance().add(after.covariance()).subtract(link).subtract(link.transpose());
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

    /**
     * A time in which the axis stood still.
     *
     * @param movedBy what had moved it before; the first stand has nothing
     */
    record Stand(Optional<Step> movedBy, List<Step.Sighted> sightings) {}

    /** Solves with all sightings but those whose numbers are in {@code setAside}. */
    Smoothed solve(Set<Long> setAside) {
        Pass latest = pass(List.of(), setAside);
        boolean settled = false;
        for (int round = 0; round < MOST_PASSES && !settled; round++) {
            Pass next = pass(latest.states(), setAside);
            settled = farthest(latest.states(), next.states()) < SETTLED_RAD;
            latest = next;
        }
        return new Smoothed(latest.states(), latest.links(), stands, latest.chiSquared(), settled);
    }

    /** What is known before anything was measured. */
    AxisState prior() {
        return AxisState.prior(site, rig);
    }

    /** How much of the azimuth that turns make may be due to the base's lean, 1 sigma. */
    double leanOnAzimuth() {
        return AxisState.leanOnAzimuth(site, rig);
    }

    private record Pass(List<AxisState> states, List<RealMatrix> links, double chiSquared) {}

    private Pass pass(List<AxisState> reference, Set<Long> setAside) {
        double chiSquared = 0;
        int n = stands.size();
        List<AxisState> filtered = new ArrayList<>(n);
        List<AxisState> predicted = new ArrayList<>(n);
        List<Motion> motions = new ArrayList<>(n);
        AxisState state = prior();
        for (int i = 0; i < n; i++) {
            Angle altitude = i == 0 || reference.isEmpty()
                    ? state.altitude()
                    : reference.get(i - 1).altitude();
            Motion motion = motion(stands.get(i).movedBy(), state.senses(), altitude);
            state = motion.applyTo(state);
            motions.add(motion);
            predicted.add(state);
            for (Step.Sighted sighted : stands.get(i).sightings()) {
                if (!setAside.contains(sighted.seq())) {
                    LinearisedSighting line = reference.isEmpty()
                            ? firstGuess(sighted, state)
                            : LinearisedSighting.of(sighted.model(), reference.get(i));
                    chiSquared += line.addedChiSquared(state);
                    state = line.update(state);
                }
            }
            filtered.add(state);
        }
        return backward(filtered, predicted, motions, chiSquared);
    }

    /** A sighting linearised about its own result, before there is any night to linearise about. */
    private static LinearisedSighting firstGuess(Step.Sighted sighted, AxisState before) {
        LinearisedSighting line = LinearisedSighting.of(sighted.model(), before);
        for (int round = 1; round < FIRST_GUESS_ROUNDS; round++) {
            line = LinearisedSighting.of(sighted.model(), line.update(before));
        }
        return line;
    }

    /** H. E. Rauch, F. Tung, C. T. Striebel, AIAA J. 3 (1965) 1445. */
    private static Pass backward(
            List<AxisState> filtered, List<AxisState> predicted, List<Motion> motions, double chiSquared) {
        int n = filtered.size();
        RealMatrix[] links = new RealMatrix[n - 1];
        AxisState[] smoothed = new AxisState[n];
        smoothed[n - 1] = filtered.get(n - 1);
        for (int i = n - 2; i >= 0; i--) {
            AxisState now = filtered.get(i);
            AxisState next = predicted.get(i + 1);
            RealMatrix cross = motions.get(i + 1).transition().multiply(now.covariance());
            RealMatrix gain = new CholeskyDecomposition(symmetric(next.covariance()), 1e-9, 0)
                    .getSolver()
                    .solve(cross)
                    .transpose();
            RealVector mean = now.mean().add(gain.operate(smoothed[i + 1].mean().subtract(next.mean())));
            RealMatrix covariance = now.covariance()
                    .add(gain.multiply(smoothed[i + 1].covariance().subtract(next.covariance()))
                            .multiplyTransposed(gain));
            smoothed[i] = new AxisState(now.site(), mean, symmetric(covariance), now.senses());
            links[i] = gain.multiply(smoothed[i + 1].covariance());
        }
        return new Pass(List.of(smoothed), List.of(links), chiSquared);
    }

    private Motion motion(Optional<Step> movedBy, TurnSenses senses, Angle presentAltitude) {
        if (movedBy.isPresent() && movedBy.get() instanceof Step.Turned turned) {
            return Motion.turns(rig, turned.azimuth(), turned.altitude(), senses, presentAltitude);
        }
        if (movedBy.isPresent() && movedBy.get() instanceof Step.Slipped slipped) {
            return Motion.slipping(rig, slipped, senses, presentAltitude);
        }
        if (movedBy.isPresent() && movedBy.get() instanceof Step.Shifted shifted) {
            return Motion.shift(site, shifted.usual(), shifted.sigma(), senses);
        }
        return Motion.shift(site, AxisOffset.NONE, Angle.ZERO, senses);
    }

    private static double farthest(List<AxisState> a, List<AxisState> b) {
        double farthest = 0;
        for (int i = 0; i < a.size(); i++) {
            farthest = Math.max(
                    farthest, a.get(i).axis().separation(b.get(i).axis()).radians());
        }
        return farthest;
    }

    private static RealMatrix symmetric(RealMatrix m) {
        return m.add(m.transpose()).scalarMultiply(0.5);
    }

    private static List<Stand> stands(List<Step> steps) {
        List<Stand> stands = new ArrayList<>();
        stands.add(new Stand(Optional.empty(), new ArrayList<>()));
        for (Step step : steps) {
            if (step instanceof Step.Sighted sighted) {
                stands.get(stands.size() - 1).sightings().add(sighted);
            } else {
                stands.add(new Stand(Optional.of(step), new ArrayList<>()));
            }
        }
        return stands;
    }
}
