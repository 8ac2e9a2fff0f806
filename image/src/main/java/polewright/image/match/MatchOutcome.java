package polewright.image.match;

/** What came of matching a frame. */
public sealed interface MatchOutcome permits MatchedFrame, Unmatched {
    /** How many stars were found on the frame. */
    int starsFound();
}
