package polewright.alignment.camera;

/** The state of the right-ascension drive between frames. The axis does not depend on it. */
public enum Drive {
    /** It tracked the sky. */
    TRACKING,
    /** It was off: stars leave trails. */
    STANDING,
    NOT_TOLD
}
