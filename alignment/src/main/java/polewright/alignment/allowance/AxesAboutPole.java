package polewright.alignment.allowance;

import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.sky.place.Site;

/** The true pole and axes around it, for finite differences. */
record AxesAboutPole(
        CandidateAxis atPole,
        CandidateAxis east,
        CandidateAxis west,
        CandidateAxis above,
        CandidateAxis below,
        CandidateAxis aboveEast) {
    /** Their distance from the pole in each direction. */
    static final double STEP_ARCMIN = 10;

    static AxesAboutPole of(Site site) {
        return new AxesAboutPole(
                CandidateAxis.of(site, Vector2D.ZERO),
                CandidateAxis.of(site, new Vector2D(STEP_ARCMIN, 0)),
                CandidateAxis.of(site, new Vector2D(-STEP_ARCMIN, 0)),
                CandidateAxis.of(site, new Vector2D(0, STEP_ARCMIN)),
                CandidateAxis.of(site, new Vector2D(0, -STEP_ARCMIN)),
                CandidateAxis.of(site, new Vector2D(STEP_ARCMIN, STEP_ARCMIN)));
    }
}
