package polewright.frames.match;

/**
 * No place in the sky fits.
 *
 * @param starsFound on the frame
 * @param reason why, in plain words
 * @param remedy what to do, as an imperative without its full stop
 */
public record Unmatched(int starsFound, String reason, String remedy) implements MatchOutcome {}
