package polewright.sky.almanac;

import polewright.sky.angle.Angle;

/**
 * The depth of the Sun below the horizon at which each part of the night begins or ends: airless altitude of its
 * centre.
 */
public enum SunDepth {
    /** −50′: 34′ of refraction and 16′ of semidiameter (the almanacs' convention). */
    SUNSET("sunset", -50 / 60.0),
    CIVIL("civil twilight", -6),
    NAUTICAL("nautical twilight", -12),
    ASTRONOMICAL("astronomical twilight", -18);

    private final String words;
    private final double altitudeDeg;

    SunDepth(String words, double altitudeDeg) {
        this.words = words;
        this.altitudeDeg = altitudeDeg;
    }

    public String words() {
        return words;
    }

    /** Airless altitude of the Sun's centre, negative. */
    public Angle altitude() {
        return Angle.ofDegrees(altitudeDeg);
    }
}
