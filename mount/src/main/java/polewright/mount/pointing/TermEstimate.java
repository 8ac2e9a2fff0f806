package polewright.mount.pointing;

import polewright.sky.angle.Angle;

/**
 * The estimate of one term.
 *
 * @param value the likeliest value; pulled toward zero where the stars do not constrain it
 * @param sigma its 1 sigma
 * @param usualSize 1 sigma of its prior
 */
public record TermEstimate(PointingTerm term, Angle value, Angle sigma, Angle usualSize) {
    /** A term is supported if the stars have at least halved its uncertainty. */
    private static final double HALVED = 0.5;

    public boolean isSupported() {
        return sigma.radians() <= HALVED * usualSize.radians();
    }
}
