package polewright.alignment.camera;

/** What the right-ascension drive did between frames. The axis does not depend on it. */
public enum Drive {
    /** It followed the sky. */
    TRACKING,
    /** It was off: stars leave trails. */
    STANDING,
    NOT_TOLD
}
