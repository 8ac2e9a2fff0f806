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
 * The forward pass of a Kalman filter through the stationary intervals of a night.
 *
 * @param predicted the state in each interval before its own sightings
 * @param filtered the state after them
 * @param motions the move that led to each interval; that of the first is not used
 * @param corrections the scalar updates by the sightings of each interval
 * @param cumulativeChiSquared the χ² of believed sightings, turns and prior, up to and including each interval
 */
record ForwardPass(
        List<StationaryInterval> intervals,
        List<AxisState> predicted,
        List<AxisState> filtered,
        List<Motion> motions,
        List<List<Correction>> corrections,
        List<Double> cumulativeChiSquared) {
    private static final int FIRST_GUESS_ROUNDS = 4;
    // Two arcseconds: the passes that follow linearise every sighting again.
    private static final double NEAR_ENOUGH_TO_GUESS_RAD = 1e-5;
    private static final ForwardPass NONE =
            new ForwardPass(List.of(), List.of(), List.of(), List.of(), List.of(), List.of());

    /** The first pass, with no linearisation points yet: each sighting is linearised about its own result in turn. */
    static ForwardPass firstGuess(
            Rig rig, AxisState prior, List<StationaryInterval> intervals, List<boolean[]> believed) {
        return NONE.from(0, Optional.empty(), rig, prior, intervals, believed);
    }

    /**
     * The first pass of a longer night, reusing the intervals in common: a forward pass does not depend on later ones.
     */
    ForwardPass continued(Rig rig, AxisState prior, List<StationaryInterval> longer, List<boolean[]> believed) {
        int same = 0;
        while (same < Math.min(intervals.size(), longer.size())
                && longer.get(same).isLike(intervals.get(same))) {
            same++;
        }
        return from(same, Optional.empty(), rig, prior, longer, believed);
    }

    /** A pass with the sightings linearised about a given axis in each interval. */
    static ForwardPass about(
            List<LinearisationPoint> points,
            Rig rig,
            AxisState prior,
            List<StationaryInterval> intervals,
            List<boolean[]> believed) {
        return NONE.from(0, Optional.of(points), rig, prior, intervals, believed);
    }

    /** A pass through these intervals, copying the first ones from this pass. */
    private ForwardPass from(
            int gone,
            Optional<List<LinearisationPoint>> points,
            Rig rig,
            AxisState prior,
            List<StationaryInterval> all,
            List<boolean[]> believed) {
        Interruption.check();
        List<AxisState> before = first(gone, predicted, all.size());
        List<AxisState> after = first(gone, filtered, all.size());
        List<Motion> moved = first(gone, motions, all.size());
        List<List<Correction>> corrected = first(gone, corrections, all.size());
        List<Double> sums = first(gone, cumulativeChiSquared, all.size());
        AxisState state = gone == 0 ? prior : after.get(gone - 1);
        double chiSquared = gone == 0 ? 0 : sums.get(gone - 1);
        for (int i = gone; i < all.size(); i++) {
            StationaryInterval interval = all.get(i);
            Angle altitude = i == 0 || points.isEmpty()
                    ? state.altitude()
                    : new Angle(points.get().get(i - 1).altitudeRad());
            Motion motion = motion(rig, state.site(), interval.movedBy(), state.senses(), altitude);
            state = i == 0 ? state : motion.applyTo(state);
            moved.add(motion);
            before.add(state);
            List<Correction> here = new ArrayList<>();
            if (points.isPresent()) {
                IntervalSightings.Together seen =
                        interval.sightings().about(points.get().get(i), believed.get(i));
                chiSquared += seen.remainder() + seen.line().squaredInnovation(state);
                state = seen.line().update(state, here);
            } else {
                List<Step.Sighted> sightings = interval.sightings().all();
                for (int k = 0; k < sightings.size(); k++) {
                    if (believed.get(i)[k]) {
                        LinearisedSighting line = firstGuess(
                                sightings.get(k), interval.sightings().scatter(k), state);
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

    /** A sighting linearised iteratively about its own result. */
    private static LinearisedSighting firstGuess(Step.Sighted sighted, double scatter, AxisState before) {
        LinearisationPoint about = LinearisationPoint.of(before);
        LinearisedSighting line = LinearisedSighting.of(sighted.model(), about).over(scatter);
        for (int round = 1; round < FIRST_GUESS_ROUNDS; round++) {
            LinearisationPoint next = line.pointAfter(before);
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

    /** χ² of the whole pass. */
    double chiSquared() {
        return cumulativeChiSquared.get(cumulativeChiSquared.size() - 1);
    }

    /** −2 ln of the likelihood of the believed measurements, up to a constant. */
    double costOfEvidence() {
        double spread = 0;
        for (List<Correction> here : corrections) {
            for (Correction correction : here) {
                spread += Math.log(correction.variance());
            }
        }
        return chiSquared() + spread;
    }

    /** The state at the end of the night. */
    AxisState last() {
        return filtered.get(filtered.size() - 1);
    }

    /** The smoothed axis in each interval. */
    List<LinearisationPoint> points() {
        LinearisationPoint[] points = new LinearisationPoint[intervals.size()];
        double[] slope = new double[AxisState.SIZE];
        for (int i = intervals.size() - 1; i >= 0; i--) {
            points[i] = Adjoint.moved(filtered.get(i), slope);
            for (int k = corrections.get(i).size() - 1; k >= 0; k--) {
                Adjoint.takeBefore(slope, corrections.get(i).get(k));
            }
            motions.get(i).gains().addTransposed(slope, 0);
        }
        return List.of(points);
    }

    /** The smoothed state in each interval. */
    SmoothedNight smoothed(boolean converged) {
        AxisState[] states = new AxisState[intervals.size()];
        Adjoint[] adjoints = new Adjoint[intervals.size()];
        Adjoint adjoint = Adjoint.atTheEnd();
        for (int i = intervals.size() - 1; i >= 0; i--) {
            states[i] = i == intervals.size() - 1 ? filtered.get(i) : adjoint.smoothed(filtered.get(i));
            for (int k = corrections.get(i).size() - 1; k >= 0; k--) {
                adjoint = adjoint.before(corrections.get(i).get(k));
            }
            adjoints[i] = adjoint;
            adjoint = adjoint.before(motions.get(i));
        }
        return new SmoothedNight(List.of(states), this, List.of(adjoints), chiSquared(), converged);
    }
}
