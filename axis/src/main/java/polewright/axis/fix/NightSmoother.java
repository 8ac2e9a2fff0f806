package polewright.axis.fix;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import polewright.axis.AxisOffset;
import polewright.axis.rig.Rig;
import polewright.sky.Interruption;
import polewright.sky.angle.Angle;

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
    private static final double NEAR_RAD = Angle.ofDegrees(0.3).radians();
    private static final double ARCMIN_PER_RAD = new Angle(1).arcminutes();

    private final Past past;
    private final Rig rig;
    private final AxisState prior;
    private final List<Stand> stands;
    private final Map<Long, Place> places;

    NightSmoother(Past past, List<Step> steps) {
        this(past, past.rig(), Stand.of(steps));
    }

    private NightSmoother(Past past, Rig rig, List<Stand> stands) {
        this.past = past;
        this.rig = rig;
        this.prior = past.leaves(rig);
        this.stands = stands;
        this.places = places(stands);
    }

    /** Where a sighting is to be found. */
    private record Place(int stand, int index) {}

    private static Map<Long, Place> places(List<Stand> stands) {
        Map<Long, Place> places = new HashMap<>();
        for (int i = 0; i < stands.size(); i++) {
            List<Step.Sighted> sightings = stands.get(i).seen().all();
            for (int j = 0; j < sightings.size(); j++) {
                places.put(sightings.get(j).seq(), new Place(i, j));
            }
        }
        return places;
    }

    /** The same night with another rig. */
    NightSmoother with(Rig other) {
        return other.equals(rig) ? this : new NightSmoother(past, other, stands);
    }

    /** The same night with another move in the place of one of its own. */
    NightSmoother with(Step meant, Step told) {
        return new NightSmoother(
                past,
                rig,
                stands.stream()
                        .map(s -> s.movedBy().filter(told::equals).isPresent() ? s.movedInsteadBy(meant) : s)
                        .toList());
    }

    List<Step.Sighted> sightings() {
        return stands.stream().flatMap(s -> s.seen().all().stream()).toList();
    }

    /** A sighting about the axis as a solution of this night has it. */
    LinearisedSighting line(Step.Sighted sighted, Smoothed night) {
        Place place = place(sighted);
        return stands.get(place.stand())
                .seen()
                .line(place.index(), night.states().get(place.stand()));
    }

    /** The axis as it stood for a sighting. */
    AxisState stateFor(Step.Sighted sighted, Smoothed night) {
        return night.states().get(place(sighted).stand());
    }

    private Place place(Step.Sighted sighted) {
        return Objects.requireNonNull(places.get(sighted.seq()), "not of this night");
    }

    /**
     * The stands of the night with the axis in each.
     *
     * @param gains how each state goes with the next
     * @param chiSquared what the sightings that were believed, the turns and the prior have to be forgiven
     * @param settled whether the passes came to rest on one answer
     */
    record Smoothed(
            List<AxisState> states, List<SmoothingGain> gains, List<Stand> stands, double chiSquared, boolean settled) {
        AxisState last() {
            return states.get(states.size() - 1);
        }

        /** How far the axis went at each shift, as the whole night tells. */
        List<Moved> shifts() {
            List<Moved> shifts = new ArrayList<>();
            for (int i = 1; i < stands.size(); i++) {
                if (stands.get(i).movedBy().orElse(null) instanceof Step.Shifted shifted) {
                    RealMatrix link = gains.get(i - 1).link(states.get(i));
                    shifts.add(Moved.between(states.get(i - 1), states.get(i), link, shifted));
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

    private List<boolean[]> believed(Set<Long> setAside) {
        return stands.stream().map(stand -> stand.seen().believed(setAside)).toList();
    }

    /** Solves with all sightings but those whose numbers are in {@code setAside}. */
    Smoothed solve(Set<Long> setAside) {
        List<boolean[]> believed = believed(setAside);
        return solve(believed, pass(List.of(), believed));
    }

    /** The same, trying first from a solution of a night that may not be much different: if so, quicker to the same end. */
    Smoothed solve(Set<Long> setAside, Smoothed near) {
        if (!near.settled()) {
            return solve(setAside);
        }
        List<boolean[]> believed = believed(setAside);
        Smoothed found = solve(believed, pass(near.states(), believed));
        boolean isNear = found.settled() && farthest(near.states(), found.states()) < NEAR_RAD;
        // Farther off, sightings are no straight lines any more, and where the passes come to rest depends on their
        // start.
        return isNear ? found : solve(setAside);
    }

    /** χ² between the sightings of each stand themselves, wherever the axis was. */
    double remainder(Smoothed night, Set<Long> setAside) {
        double remainder = 0;
        for (int i = 0; i < stands.size(); i++) {
            StandSightings seen = stands.get(i).seen();
            remainder +=
                    seen.about(night.states().get(i), seen.believed(setAside)).remainder();
        }
        return remainder;
    }

    private Smoothed solve(List<boolean[]> believed, Pass first) {
        Pass latest = first;
        boolean settled = false;
        for (int round = 0; round < MOST_PASSES && !settled; round++) {
            Pass next = pass(latest.states(), believed);
            settled = farthest(latest.states(), next.states()) < SETTLED_RAD;
            latest = next;
        }
        return new Smoothed(latest.states(), latest.gains(), stands, latest.chiSquared(), settled);
    }

    /** What is known before the first of these steps. */
    AxisState prior() {
        return prior;
    }

    /** How much of the azimuth that turns make may be due to the base's lean, 1 sigma. */
    double leanOnAzimuth() {
        return AxisState.leanOnAzimuth(prior.site(), rig);
    }

    /** The axis after the first of these steps, as they alone tell, by the solution of them all. */
    AxisState after(List<Step> first, Smoothed night, Set<Long> setAside) {
        List<Stand> some = Stand.of(first);
        NightSmoother alone = new NightSmoother(past, rig, some);
        Pass pass = alone.pass(night.states().subList(0, some.size()), alone.believed(setAside));
        return pass.states().get(some.size() - 1);
    }

    private record Pass(List<AxisState> states, List<SmoothingGain> gains, double chiSquared) {}

    private Pass pass(List<AxisState> reference, List<boolean[]> believed) {
        Interruption.check();
        double chiSquared = 0;
        int n = stands.size();
        List<AxisState> filtered = new ArrayList<>(n);
        List<AxisState> predicted = new ArrayList<>(n);
        List<Motion> motions = new ArrayList<>(n);
        AxisState state = prior;
        for (int i = 0; i < n; i++) {
            Angle altitude = i == 0 || reference.isEmpty()
                    ? state.altitude()
                    : reference.get(i - 1).altitude();
            Stand stand = stands.get(i);
            Motion motion = motion(stand.movedBy(), state.senses(), altitude);
            state = i == 0 ? state : motion.applyTo(state);
            motions.add(motion);
            predicted.add(state);
            if (!reference.isEmpty()) {
                StandSightings.Together seen = stand.seen().about(reference.get(i), believed.get(i));
                chiSquared += seen.remainder() + seen.line().squaredInnovation(state);
                state = seen.line().update(state);
            } else {
                for (int k = 0; k < believed.get(i).length; k++) {
                    if (believed.get(i)[k]) {
                        LinearisedSighting line = firstGuess(stand.seen().all().get(k), state);
                        chiSquared += line.squaredInnovation(state);
                        state = line.update(state);
                    }
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

    private static Pass backward(
            List<AxisState> filtered, List<AxisState> predicted, List<Motion> motions, double chiSquared) {
        int n = filtered.size();
        SmoothingGain[] gains = new SmoothingGain[n - 1];
        AxisState[] smoothed = new AxisState[n];
        smoothed[n - 1] = filtered.get(n - 1);
        for (int i = n - 2; i >= 0; i--) {
            gains[i] = SmoothingGain.of(motions.get(i + 1), predicted.get(i + 1));
            smoothed[i] = gains[i].smoothed(filtered.get(i), predicted.get(i + 1), smoothed[i + 1]);
        }
        return new Pass(List.of(smoothed), List.of(gains), chiSquared);
    }

    private Motion motion(Optional<Step> movedBy, TurnSenses senses, Angle presentAltitude) {
        Step step = movedBy.orElse(null);
        if (step == null) {
            return Motion.shift(prior.site(), AxisOffset.NONE, Angle.ZERO, senses);
        } else if (step instanceof Step.Turned turned) {
            return Motion.turns(rig, turned.azimuth(), turned.altitude(), senses, presentAltitude);
        } else if (step instanceof Step.Slipped slipped) {
            return Motion.slipping(rig, slipped, senses, presentAltitude);
        } else if (step instanceof Step.Shifted shifted) {
            return Motion.shift(prior.site(), shifted.usual(), shifted.sigma(), senses);
        }
        throw new IllegalStateException("no motion by " + step);
    }

    /** How far two solutions have the axis apart at most, on the sky, radians. */
    private static double farthest(List<AxisState> a, List<AxisState> b) {
        double farthest = 0;
        for (int i = 0; i < a.size(); i++) {
            double altitude = a.get(i).mean(AxisState.ALTITUDE);
            double up = b.get(i).mean(AxisState.ALTITUDE) - altitude;
            double across = (b.get(i).mean(AxisState.AZIMUTH) - a.get(i).mean(AxisState.AZIMUTH)) * Math.cos(altitude);
            farthest = Math.max(farthest, up * up + across * across);
        }
        return Math.sqrt(farthest);
    }
}
