package polewright.image.match;

/** The result of matching a frame. */
public sealed interface MatchOutcome permits MatchedFrame, Unmatched {
    /** Number of stars found on the frame. */
    int starsFound();
}
