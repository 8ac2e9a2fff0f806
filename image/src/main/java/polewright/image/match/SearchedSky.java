package polewright.image.match;

import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * The part of an index used by one search.
 *
 * @param index of patterns
 * @param below only patterns of stars of a smaller rank than this
 * @param patch only patterns of stars in this part of the sky, including frames around its edge; all if empty
 * @param patterns their approximate number, by which the odds of a similarity are divided
 */
record SearchedSky(PatternIndex index, int below, Optional<SkyPatch> patch, double patterns) {
    // Lenses distort, so scales are searched a little beyond the range given.
    private static final double SLACK = 1.1;

    MappedStars stars() {
        return index.sky();
    }

    /** Visits the patterns in it with a similar code. */
    void like(float[] code, float tolerance, PatternIndex.Visitor visitor) {
        if (patch.isEmpty()) {
            index.like(code, tolerance, below, visitor);
            return;
        }
        Vector3D middle = patch.get().direction();
        double nearest = Math.cos(Math.min(Math.PI, SLACK * patch.get().radius().radians()));
        index.like(code, tolerance, below, pattern -> {
            if (stars().direction(index.rank(pattern, 0)).dotProduct(middle) >= nearest) {
                visitor.pattern(pattern);
            }
        });
    }
}
