package polewright.app.text;

import polewright.night.SuggestedStar;

/** Where to look for a star. */
public final class StarWords {
    private StarWords() {}

    /** {@code Rigel: south-south-east (158°), 26° up}. */
    public static String place(SuggestedStar star) {
        var direction = star.direction();
        return name(star) + ": " + AngleWords.compassPoint(direction.azimuth()) + " ("
                + Math.round(direction.azimuth().degrees()) % 360 + "°), "
                + Math.round(direction.altitude().degrees()) + "° up"
                + (star.isBright() ? "" : ", a faint star");
    }

    /** A faint star with its letter as well, as charts have it. */
    private static String name(SuggestedStar star) {
        String label = star.star().label();
        String letter = star.star().designations().get(0);
        return star.isBright() || letter.equals(label) ? label : label + " (" + letter + ")";
    }
}
