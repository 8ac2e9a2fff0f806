package polewright.frames.star;

/**
 * Tells a star from what no lens drew as it draws stars: hot pixels, alone or in pairs, tracks of cosmic rays, pieces of a
 * satellite's trail. A star has passed the same optics, and moved the same way, as all others.
 */
final class Impostor {
    // A star may be this much narrower than the usual one: the middle of a field is sharper than its corners.
    private static final double SHARPEST = 0.6;
    private static final double LONGEST = 2.5;
    private static final double CLEAR_SIGNAL = 10;
    private static final double CLEARLY_LONG = 2;
    private static final double SHORTEST_TRAIL = 0.55;
    private static final double LONGEST_TRAIL = 1.6;
    private static final double ASKEW_RAD = Math.toRadians(25);

    private final UsualStar usual;

    Impostor(UsualStar usual) {
        this.usual = usual;
    }

    /** Whether a fit of free shape is narrower than a star here can be. */
    boolean isTooSharp(Fit free) {
        double minor = Math.sqrt(free.shape().minorVariance());
        double doubt = minor / free.signalToNoise() * 2;
        return minor + doubt
                < SHARPEST * Math.sqrt(usual.shapeAt(free.x(), free.y()).minorVariance());
    }

    /** Whether a fit of free shape is longer than a star here can be, or not as the common trail is. */
    boolean isAskew(Fit free) {
        if (free.signalToNoise() < CLEAR_SIGNAL) {
            return false;
        }
        StarShape expected = usual.shapeAt(free.x(), free.y());
        StarShape shape = free.shape();
        double longer = Math.sqrt(shape.majorVariance() / expected.majorVariance());
        if (expected.elongation() < CLEARLY_LONG) {
            return longer > LONGEST;
        }
        return longer < SHORTEST_TRAIL
                || longer > LONGEST_TRAIL
                || Math.abs(Math.sin(shape.longAxisRad() - expected.longAxisRad())) > Math.sin(ASKEW_RAD);
    }
}
