package polewright.session;

import java.time.Instant;

/**
 * A short summary of a night.
 *
 * @param begunAt entry time of its first event
 * @param lastAt entry time of its last event
 * @param siteName the user's name for the site
 * @param events number of events, including withdrawn ones
 */
public record NightSummary(NightId id, Instant begunAt, Instant lastAt, String siteName, long events) {}
