package polewright.alignment.allowance;

import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.sky.place.Site;

/** The true pole and axes about it, to take differences between. */
record AxesAboutPole(
        TriedAxis atPole, TriedAxis east, TriedAxis west, TriedAxis above, TriedAxis below, TriedAxis aboveEast) {
    /** How far they are from the pole, each way. */
    static final double STEP_ARCMIN = 10;

    static AxesAboutPole of(Site site) {
        return new AxesAboutPole(
                TriedAxis.of(site, Vector2D.ZERO),
                TriedAxis.of(site, new Vector2D(STEP_ARCMIN, 0)),
                TriedAxis.of(site, new Vector2D(-STEP_ARCMIN, 0)),
                TriedAxis.of(site, new Vector2D(0, STEP_ARCMIN)),
                TriedAxis.of(site, new Vector2D(0, -STEP_ARCMIN)),
                TriedAxis.of(site, new Vector2D(STEP_ARCMIN, STEP_ARCMIN)));
    }
}
