package polewright.alignment.fix;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A time in which the axis stood still.
 *
 * @param movedBy what had moved it before; the first stand has nothing
 * @param seen what was sighted in it
 */
record StationaryInterval(Optional<Step> movedBy, IntervalSightings seen) {
    /** The stands of a night, in order. */
    static List<StationaryInterval> of(List<Step> steps) {
        List<StationaryInterval> stands = new ArrayList<>();
        Optional<Step> movedBy = Optional.empty();
        List<Step.Sighted> sightings = new ArrayList<>();
        for (Step step : steps) {
            if (step instanceof Step.Sighted sighted) {
                sightings.add(sighted);
            } else {
                stands.add(new StationaryInterval(movedBy, new IntervalSightings(sightings)));
                movedBy = Optional.of(step);
                sightings = new ArrayList<>();
            }
        }
        stands.add(new StationaryInterval(movedBy, new IntervalSightings(sightings)));
        return List.copyOf(stands);
    }

    /** Whether another has the same sightings after the same move. */
    boolean isLike(StationaryInterval other) {
        return movedBy.equals(other.movedBy) && seen.isLike(other.seen);
    }

    /** The same with readings by eye that scatter so many times as far as stated. */
    StationaryInterval scattering(double times) {
        return new StationaryInterval(movedBy, seen.scattering(times));
    }

    /** The same sightings after another move. */
    StationaryInterval movedInsteadBy(Step other) {
        return new StationaryInterval(Optional.of(other), seen);
    }
}
