package polewright.alignment.fix;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A period during which the axis did not move.
 *
 * @param movedBy the move before it; empty for the first interval
 * @param sightings those made during it
 */
record StationaryInterval(Optional<Step> movedBy, IntervalSightings sightings) {
    /** The stationary intervals of a night, in order. */
    static List<StationaryInterval> of(List<Step> steps) {
        List<StationaryInterval> intervals = new ArrayList<>();
        Optional<Step> movedBy = Optional.empty();
        List<Step.Sighted> sightings = new ArrayList<>();
        for (Step step : steps) {
            if (step instanceof Step.Sighted sighted) {
                sightings.add(sighted);
            } else {
                intervals.add(new StationaryInterval(movedBy, new IntervalSightings(sightings)));
                movedBy = Optional.of(step);
                sightings = new ArrayList<>();
            }
        }
        intervals.add(new StationaryInterval(movedBy, new IntervalSightings(sightings)));
        return List.copyOf(intervals);
    }

    /** Whether another has the same sightings after the same move. */
    boolean isLike(StationaryInterval other) {
        return movedBy.equals(other.movedBy) && sightings.isLike(other.sightings);
    }

    /** The same with the stated sigmas of readings by eye multiplied by a factor. */
    StationaryInterval scattering(double times) {
        return new StationaryInterval(movedBy, sightings.scattering(times));
    }

    /** The same sightings after another move. */
    StationaryInterval movedInsteadBy(Step other) {
        return new StationaryInterval(Optional.of(other), sightings);
    }
}
