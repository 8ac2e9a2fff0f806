package polewright.alignment.fix;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Rig;
import polewright.sky.Interruption;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/**
 * A Kalman filter's pass through the stands of a night.
 *
 * @param predicted the state in each stand before its own sightings
 * @param filtered after them
 * @param motions how each stand was come to; that of the first is not used
 * @param corrections what the sightings of each stand did, figure by figure
 * @param forgiven up to each stand, what the sightings that were believed, the turns and the beginning have to be forgiven: χ²
 */
record ForwardPass(
        List<StationaryInterval> stands,
        List<AxisState> predicted,
        List<AxisState> filtered,
        List<Motion> motions,
        List<List<Correction>> corrections,
        List<Double> forgiven) {
    private static final int FIRST_GUESS_ROUNDS = 4;
    // Two arcseconds: the passes that follow draw every sighting again.
    private static final double NEAR_ENOUGH_TO_GUESS_RAD = 1e-5;
    private static final ForwardPass NONE =
            new ForwardPass(List.of(), List.of(), List.of(), List.of(), List.of(), List.of());

    /** Before there is anything to draw sightings straight about: each about its own result, one after the other. */
    static ForwardPass firstGuess(Rig rig, AxisState prior, List<StationaryInterval> stands, List<boolean[]> believed) {
        return NONE.from(0, Optional.empty(), rig, prior, stands, believed);
    }

    /** The same of a night that has grown out of the one of this first guess: no stand says anything of those before it. */
    ForwardPass continued(Rig rig, AxisState prior, List<StationaryInterval> longer, List<boolean[]> believed) {
        int same = 0;
        while (same < Math.min(stands.size(), longer.size()) && longer.get(same).isLike(stands.get(same))) {
            same++;
        }
        return from(same, Optional.empty(), rig, prior, longer, believed);
    }

    /** With sightings straight about where the axis is held to be in each stand. */
    static ForwardPass about(
            List<LinearisationPoint> spots,
            Rig rig,
            AxisState prior,
            List<StationaryInterval> stands,
            List<boolean[]> believed) {
        return NONE.from(0, Optional.of(spots), rig, prior, stands, believed);
    }

    /** A pass through these stands, of which the first were gone through in this one. */
    private ForwardPass from(
            int gone,
            Optional<List<LinearisationPoint>> spots,
            Rig rig,
            AxisState prior,
            List<StationaryInterval> all,
            List<boolean[]> believed) {
        Interruption.check();
        List<AxisState> before = first(gone, predicted, all.size());
        List<AxisState> after = first(gone, filtered, all.size());
        List<Motion> moved = first(gone, motions, all.size());
        List<List<Correction>> corrected = first(gone, corrections, all.size());
        List<Double> sums = first(gone, forgiven, all.size());
        AxisState state = gone == 0 ? prior : after.get(gone - 1);
        double chiSquared = gone == 0 ? 0 : sums.get(gone - 1);
        for (int i = gone; i < all.size(); i++) {
            StationaryInterval stand = all.get(i);
            Angle altitude = i == 0 || spots.isEmpty()
                    ? state.altitude()
                    : new Angle(spots.get().get(i - 1).altitudeRad());
            Motion motion = motion(rig, state.site(), stand.movedBy(), state.senses(), altitude);
            state = i == 0 ? state : motion.applyTo(state);
            moved.add(motion);
            before.add(state);
            List<Correction> here = new ArrayList<>();
            if (spots.isPresent()) {
                IntervalSightings.Together seen = stand.seen().about(spots.get().get(i), believed.get(i));
                chiSquared += seen.remainder() + seen.line().squaredInnovation(state);
                state = seen.line().update(state, here);
            } else {
                List<Step.Sighted> sightings = stand.seen().all();
                for (int k = 0; k < sightings.size(); k++) {
                    if (believed.get(i)[k]) {
                        LinearisedSighting line =
                                firstGuess(sightings.get(k), stand.seen().scatter(k), state);
                        chiSquared += line.squaredInnovation(state);
                        state = line.update(state, here);
                    }
                }
            }
            after.add(state);
            corrected.add(here);
            sums.add(chiSquared);
        }
        return new ForwardPass(all, before, after, moved, corrected, sums);
    }

    private static <T> List<T> first(int some, List<T> of, int size) {
        List<T> first = new ArrayList<>(size);
        first.addAll(of.subList(0, some));
        return first;
    }

    /** A sighting straight about its own result. */
    private static LinearisedSighting firstGuess(Step.Sighted sighted, double scatter, AxisState before) {
        LinearisationPoint about = LinearisationPoint.of(before);
        LinearisedSighting line = LinearisedSighting.of(sighted.model(), about).over(scatter);
        for (int round = 1; round < FIRST_GUESS_ROUNDS; round++) {
            LinearisationPoint next = line.spotAfter(before);
            if (about.from(next) < NEAR_ENOUGH_TO_GUESS_RAD) {
                break;
            }
            about = next;
            line = LinearisedSighting.of(sighted.model(), about).over(scatter);
        }
        return line;
    }

    private static Motion motion(Rig rig, Site site, Optional<Step> movedBy, TurnSenses senses, Angle presentAltitude) {
        Step step = movedBy.orElse(null);
        if (step == null) {
            return Motion.shift(site, AxisOffset.NONE, Angle.ZERO, senses);
        } else if (step instanceof Step.Turned turned) {
            return Motion.turns(rig, turned.azimuth(), turned.altitude(), senses, presentAltitude);
        } else if (step instanceof Step.Slipped slipped) {
            return Motion.slipping(rig, slipped, senses, presentAltitude);
        } else if (step instanceof Step.TurnedUnlogged unlogged) {
            return Motion.unlogged(rig, unlogged, senses, presentAltitude);
        } else if (step instanceof Step.Shifted shifted) {
            return Motion.shift(site, shifted.usual(), shifted.sigma(), senses);
        }
        throw new IllegalStateException("no motion by " + step);
    }

    /** What all of it has to be forgiven. */
    double chiSquared() {
        return forgiven.get(forgiven.size() - 1);
    }

    /** Twice the negative logarithm of how probable the figures are that were believed, but for a constant. */
    double costOfEvidence() {
        double spread = 0;
        for (List<Correction> here : corrections) {
            for (Correction correction : here) {
                spread += Math.log(correction.variance());
            }
        }
        return chiSquared() + spread;
    }

    /** The state at the end, as all of these stands tell. */
    AxisState last() {
        return filtered.get(filtered.size() - 1);
    }

    /** Where the axis was in each stand, as the whole night tells. */
    List<LinearisationPoint> spots() {
        LinearisationPoint[] spots = new LinearisationPoint[stands.size()];
        double[] slope = new double[AxisState.SIZE];
        for (int i = stands.size() - 1; i >= 0; i--) {
            spots[i] = Adjoint.moved(filtered.get(i), slope);
            for (int k = corrections.get(i).size() - 1; k >= 0; k--) {
                Adjoint.takeBefore(slope, corrections.get(i).get(k));
            }
            motions.get(i).gains().addTransposed(slope, 0);
        }
        return List.of(spots);
    }

    /** The state in each stand, as the whole night tells. */
    SmoothedNight smoothed(boolean settled) {
        AxisState[] states = new AxisState[stands.size()];
        Adjoint[] rests = new Adjoint[stands.size()];
        Adjoint rest = Adjoint.atTheEnd();
        for (int i = stands.size() - 1; i >= 0; i--) {
            states[i] = i == stands.size() - 1 ? filtered.get(i) : rest.smoothed(filtered.get(i));
            for (int k = corrections.get(i).size() - 1; k >= 0; k--) {
                rest = rest.before(corrections.get(i).get(k));
            }
            rests[i] = rest;
            rest = rest.before(motions.get(i));
        }
        return new SmoothedNight(List.of(states), this, List.of(rests), chiSquared(), settled);
    }
}
