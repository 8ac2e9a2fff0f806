package polewright.alignment.advice;

/** What the sightings since the clamps were tightened have shown. */
public enum Confirmation {
    /** Nothing yet. */
    NONE,
    /** The latest sighting agrees with the rest of the night. */
    AGREES,
    /** The latest sighting was set aside: either it is wrong, or everything before it is. */
    CONTRADICTS
}
