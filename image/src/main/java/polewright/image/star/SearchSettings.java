package polewright.image.star;

/**
 * Settings of the star search.
 *
 * @param threshold least height of a star after matched filtering, in units of the noise; 5 accepts about one false
 *     star per two million independent positions
 * @param most largest number of stars to return, the brightest
 */
public record SearchSettings(double threshold, int most) {
    /** Enough for any match, with few false detections. */
    public static final SearchSettings USUAL = new SearchSettings(5, 1500);

    public SearchSettings {
        if (!(threshold >= 3) || most < 1) {
            throw new IllegalArgumentException("cannot look for " + most + " stars above " + threshold + " sigma");
        }
    }
}
