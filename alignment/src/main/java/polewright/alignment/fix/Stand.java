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
record Stand(Optional<Step> movedBy, StandSightings seen) {
    /** The stands of a night, in order. */
    static List<Stand> of(List<Step> steps) {
        List<Stand> stands = new ArrayList<>();
        Optional<Step> movedBy = Optional.empty();
        List<Step.Sighted> sightings = new ArrayList<>();
        for (Step step : steps) {
            if (step instanceof Step.Sighted sighted) {
                sightings.add(sighted);
            } else {
                stands.add(new Stand(movedBy, new StandSightings(sightings)));
                movedBy = Optional.of(step);
                sightings = new ArrayList<>();
            }
        }
        stands.add(new Stand(movedBy, new StandSightings(sightings)));
        return List.copyOf(stands);
    }

    /** Whether another has the same sightings after the same move. */
    boolean isLike(Stand other) {
        return movedBy.equals(other.movedBy) && seen.all().equals(other.seen.all());
    }

    /** The same sightings after another move. */
    Stand movedInsteadBy(Step other) {
        return new Stand(Optional.of(other), seen);
    }
}
