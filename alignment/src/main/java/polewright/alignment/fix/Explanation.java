package polewright.alignment.fix;

import java.util.Optional;
import java.util.Set;

/**
 * One possible explanation of a night, and where it puts the axis.
 *
 * @param mistake what was entered wrongly; empty if everything is as entered
 * @param notUsed the sightings that are wrong for an unknown reason
 * @param weight its probability among the explanations not ruled out; the weights sum to 1
 * @param state the resulting state of the axis and the screws
 */
public record Explanation(Optional<Mistake> mistake, Set<Long> notUsed, double weight, AxisState state) {
    public Explanation {
        notUsed = Set.copyOf(notUsed);
    }
}
