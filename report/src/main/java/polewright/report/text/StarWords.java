package polewright.report.text;

import polewright.alignment.advice.AdvisedStar;

/** Where to look for a star. */
public final class StarWords {
    private StarWords() {}

    /** {@code Rigel: south-south-east (158°), 26° up}. */
    public static String place(AdvisedStar star) {
        var direction = star.direction();
        return name(star) + ": " + AngleWords.compassPoint(direction.azimuth()) + " ("
                + Math.round(direction.azimuth().degrees()) % 360 + "°), "
                + Math.round(direction.altitude().degrees()) + "° up"
                + (star.isBright() ? "" : ", a faint star");
    }

    /** A faint star also with its letter, as in charts. */
    private static String name(AdvisedStar star) {
        return star.isBright() || star.designation().equals(star.name())
                ? star.name()
                : star.name() + " (" + star.designation() + ")";
    }
}
