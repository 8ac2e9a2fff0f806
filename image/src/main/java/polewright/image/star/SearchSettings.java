package polewright.image.star;

/**
 * How hard to look for stars.
 *
 * @param threshold least height of a star after matched filtering, over its noise; 5 lets about one false star through in
 *     two million independent places
 * @param most stars to return, the brightest of them
 */
public record SearchSettings(double threshold, int most) {
    /** Enough for any match, and seldom fooled by noise. */
    public static final SearchSettings USUAL = new SearchSettings(5, 1500);

    public SearchSettings {
        if (!(threshold >= 3) || most < 1) {
            throw new IllegalArgumentException("cannot look for " + most + " stars above " + threshold + " sigma");
        }
    }
}
