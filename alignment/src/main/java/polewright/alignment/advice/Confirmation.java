package polewright.alignment.advice;

/** What has been seen since the clamps were tightened. */
public enum Confirmation {
    /** Nothing yet. */
    NONE,
    /** The latest sighting agrees with the rest of the night. */
    AGREES,
    /** The latest sighting was set aside: it, or all that came before it, is wrong. */
    CONTRADICTS
}
