package polewright.alignment.sighting;

/** By what a reticle was set, and so along which north a drift was read. Some degrees off the pole the two differ. */
public enum ReticleNorth {
    /** The sky's: a star ran along the line with the drive off. */
    SKY,
    /** The mount's: a star was moved along the line by slow motion. */
    MOUNT,
    /** Not known: either is possible. */
    NOT_TOLD
}
