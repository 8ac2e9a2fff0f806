package polewright.image.match;

import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * The part of an index that one search looks at.
 *
 * @param index of patterns
 * @param below only patterns of stars of a smaller rank than this
 * @param patch only patterns of stars in this part of the sky, frames around its edge included; all where empty
 * @param patterns how many that are, about: by so many the odds of a likeness are divided
 */
record SearchedSky(PatternIndex index, int below, Optional<SkyPatch> patch, double patterns) {
    // Lenses bend, and scales are taken a little wider than they are told.
    private static final double SLACK = 1.1;

    MappedStars stars() {
        return index.sky();
    }

    /** Visits the patterns in it that are like a code. */
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
