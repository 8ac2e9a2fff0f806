package polewright.session;

/**
 * Identifies a night in a log.
 *
 * @param number from 1, in the order in which nights were added to the log
 */
public record NightId(long number) {}
