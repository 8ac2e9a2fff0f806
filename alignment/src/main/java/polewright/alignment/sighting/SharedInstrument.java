package polewright.alignment.sighting;

/** An instrument that brings the same error to every reading of one set-up. */
public enum SharedInstrument {
    /** Iron near it stays where it is. */
    COMPASS,
    /** The base stays out of level, and the scale's zero where it is. */
    LEVEL_AND_SCALE,
    /** The base stays out of level. */
    SHADOW
}
