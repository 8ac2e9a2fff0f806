package polewright.alignment.sighting;

/** An instrument with one systematic error for every reading of a set-up. */
public enum SharedInstrument {
    /** Iron near it stays where it is. */
    COMPASS,
    /** The base's tilt and the scale's zero error do not change. */
    LEVEL_AND_SCALE,
    /** The base's tilt does not change. */
    SHADOW
}
