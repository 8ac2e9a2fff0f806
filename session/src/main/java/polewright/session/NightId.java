package polewright.session;

/**
 * Which night of a log.
 *
 * @param number from 1, in the order in which nights came into the log
 */
public record NightId(long number) {}
