package polewright.mount.pointing;

import polewright.sky.angle.Angle;

/**
 * What the stars say of one term.
 *
 * @param value the likeliest; held to nothing as far as the stars leave it open
 * @param sigma 1 sigma of it
 * @param usualSize 1 sigma of it before any star
 */
public record TermEstimate(PointingTerm term, Angle value, Angle sigma, Angle usualSize) {
    /** A term is supported when the stars have at least halved what was not known of it. */
    private static final double HALVED = 0.5;

    public boolean isSupported() {
        return sigma.radians() <= HALVED * usualSize.radians();
    }
}
