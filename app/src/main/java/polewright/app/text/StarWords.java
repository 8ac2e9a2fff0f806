package polewright.app.text;

import polewright.night.SuggestedStar;

/** Where to look for a star. */
public final class StarWords {
    private StarWords() {}

    /** {@code Rigel: south-south-east (158°), 26° up}. */
    public static String place(SuggestedStar star) {
        var direction = star.direction();
        return star.star().label() + ": " + AngleWords.compassPoint(direction.azimuth()) + " ("
                + Math.round(direction.azimuth().degrees()) % 360 + "°), "
                + Math.round(direction.altitude().degrees()) + "° up"
                + (star.isBright() ? "" : ", a faint star");
    }
}
