package polewright.image.star;

/**
 * Distinguishes stars from light that did not pass the optics as stars do: hot pixels, alone or in pairs, cosmic-ray
 * tracks, pieces of a satellite's trail. A star has the same PSF, and the same motion, as all others.
 */
final class ArtefactFilter {
    // A star may be this much narrower than the typical one: the middle of a field is sharper than its corners.
    private static final double SHARPEST = 0.6;
    private static final double LONGEST = 2.5;
    // All stars share one motion: trail lengths vary less over a field than widths do.
    private static final double SHORTEST_TRAIL = 0.55;
    private static final double LONGEST_TRAIL = 1.7;
    private static final double CLEARLY_LONG = 2;
    private static final double CLEAR_SIGNAL = 10;

    private final PsfEstimate usual;

    ArtefactFilter(PsfEstimate usual) {
        this.usual = usual;
    }

    /** Whether a fit of free shape is narrower than a star here can be. */
    boolean isTooSharp(Fit free) {
        double least = free.shape().leastOver(usual.shapeAt(free.x(), free.y()));
        return least * (1 + 2 / free.signalToNoise()) < SHARPEST;
    }

    /** Whether a fit of free shape is longer than a star here can be, or not aligned with the common trail. */
    boolean isMisaligned(Fit free) {
        if (free.signalToNoise() < CLEAR_SIGNAL) {
            return false;
        }
        StarShape expected = usual.shapeAt(free.x(), free.y());
        boolean trailed = usual.trail().isPresent() && expected.elongation() > CLEARLY_LONG;
        return trailed
                ? free.shape().mostOver(expected) > LONGEST_TRAIL
                        || free.shape().leastOver(expected) < SHORTEST_TRAIL
                : free.shape().mostOver(expected) > LONGEST;
    }
}
