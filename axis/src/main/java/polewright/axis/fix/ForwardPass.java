package polewright.axis.fix;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import polewright.axis.AxisOffset;
import polewright.axis.rig.Rig;
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
 * @param chiSquared what the sightings that were believed, the turns and the beginning have to be forgiven
 */
record ForwardPass(
        List<Stand> stands,
        List<AxisState> predicted,
        List<AxisState> filtered,
        List<Motion> motions,
        List<List<Correction>> corrections,
        double chiSquared) {
    private static final int FIRST_GUESS_ROUNDS = 4;
    // Two arcseconds: the passes that follow draw every sighting again.
    private static final double NEAR_ENOUGH_TO_GUESS_RAD = 1e-5;

    /** Before there is anything to draw sightings straight about: each about its own result, one after the other. */
    static ForwardPass firstGuess(Rig rig, AxisState prior, List<Stand> stands, List<boolean[]> believed) {
        return pass(Optional.empty(), rig, prior, stands, believed);
    }

    /** With sightings straight about where the axis is held to be in each stand. */
    static ForwardPass about(List<Spot> spots, Rig rig, AxisState prior, List<Stand> stands, List<boolean[]> believed) {
        return pass(Optional.of(spots), rig, prior, stands, believed);
    }

    private static ForwardPass pass(
            Optional<List<Spot>> spots, Rig rig, AxisState prior, List<Stand> stands, List<boolean[]> believed) {
        Interruption.check();
        List<AxisState> predicted = new ArrayList<>(stands.size());
        List<AxisState> filtered = new ArrayList<>(stands.size());
        List<Motion> motions = new ArrayList<>(stands.size());
        List<List<Correction>> corrections = new ArrayList<>(stands.size());
        AxisState state = prior;
        double chiSquared = 0;
        for (int i = 0; i < stands.size(); i++) {
            Stand stand = stands.get(i);
            Angle altitude = i == 0 || spots.isEmpty()
                    ? state.altitude()
                    : new Angle(spots.get().get(i - 1).altitudeRad());
            Motion motion = motion(rig, state.site(), stand.movedBy(), state.senses(), altitude);
            state = i == 0 ? state : motion.applyTo(state);
            motions.add(motion);
            predicted.add(state);
            List<Correction> here = new ArrayList<>();
            if (spots.isPresent()) {
                StandSightings.Together seen = stand.seen().about(spots.get().get(i), believed.get(i));
                chiSquared += seen.remainder() + seen.line().squaredInnovation(state);
                state = seen.line().update(state, here);
            } else {
                List<Step.Sighted> sightings = stand.seen().all();
                for (int k = 0; k < sightings.size(); k++) {
                    if (believed.get(i)[k]) {
                        LinearisedSighting line = firstGuess(sightings.get(k), state);
                        chiSquared += line.squaredInnovation(state);
                        state = line.update(state, here);
                    }
                }
            }
            filtered.add(state);
            corrections.add(here);
        }
        return new ForwardPass(stands, predicted, filtered, motions, corrections, chiSquared);
    }

    /** A sighting straight about its own result. */
    private static LinearisedSighting firstGuess(Step.Sighted sighted, AxisState before) {
        Spot about = Spot.of(before);
        LinearisedSighting line = LinearisedSighting.of(sighted.model(), about);
        for (int round = 1; round < FIRST_GUESS_ROUNDS; round++) {
            Spot next = Spot.of(line.update(before));
            if (about.from(next) < NEAR_ENOUGH_TO_GUESS_RAD) {
                break;
            }
            about = next;
            line = LinearisedSighting.of(sighted.model(), about);
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

    /** The state at the end, as all of these stands tell. */
    AxisState last() {
        return filtered.get(filtered.size() - 1);
    }

    /** Where the axis was in each stand, as the whole night tells. */
    List<Spot> spots() {
        Spot[] spots = new Spot[stands.size()];
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
        return new SmoothedNight(List.of(states), this, List.of(rests), chiSquared, settled);
    }
}
