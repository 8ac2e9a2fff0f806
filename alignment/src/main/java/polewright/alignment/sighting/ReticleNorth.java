package polewright.alignment.sighting;

/**
 * How a reticle was oriented, and therefore which north a drift was read along. With the axis some degrees off the pole
 * the two differ.
 */
public enum ReticleNorth {
    /** The sky's: a star ran along the line with the drive off. */
    SKY,
    /** The mount's: a star was moved along the line by slow motion. */
    MOUNT,
    /** Unknown: either is possible. */
    NOT_TOLD
}
