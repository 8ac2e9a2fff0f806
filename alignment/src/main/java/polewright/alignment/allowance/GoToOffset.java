package polewright.alignment.allowance;

import org.hipparchus.geometry.euclidean.twod.Vector2D;

/**
 * The offset as if it were a motion: how far a go-to lands off that was set on one star and sent to another. Set on a
 * star and sent 4 h of hour angle away it errs by 2 sin 30° of the offset: by the offset itself.
 */
record GoToOffset() implements ImageMotion {
    @Override
    public Vector2D shift(CandidateAxis axis) {
        return new Vector2D(
                axis.offset().east().arcseconds(), axis.offset().up().arcseconds());
    }
}
