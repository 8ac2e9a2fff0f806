package polewright.alignment.fix;

import java.util.Optional;
import java.util.Set;

/**
 * One way to explain a night, and where it puts the axis.
 *
 * @param mistake what it holds for told wrongly; nothing if everything was as told
 * @param notUsed the sightings that it holds for wrong without knowing why
 * @param weight its probability among those that have not been ruled out; all together come to one
 * @param state the axis and the screws by it
 */
public record Explanation(Optional<Mistake> mistake, Set<Long> notUsed, double weight, AxisState state) {
    public Explanation {
        notUsed = Set.copyOf(notUsed);
    }
}
