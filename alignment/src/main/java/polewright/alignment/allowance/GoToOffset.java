package polewright.alignment.allowance;

import org.hipparchus.geometry.euclidean.twod.Vector2D;

/**
 * The go-to error treated as a motion: how far a go-to misses if the mount was set on one star and sent to another. Set
 * on a star and sent 4 h away in hour angle it misses by 2 sin 30° times the offset, which is the offset itself.
 */
record GoToOffset() implements ImageMotion {
    @Override
    public Vector2D shift(CandidateAxis axis) {
        return new Vector2D(
                axis.offset().east().arcseconds(), axis.offset().up().arcseconds());
    }
}
