package polewright.session;

import java.time.Instant;

/**
 * A night at a glance.
 *
 * @param begunAt when its first event was entered
 * @param lastAt when its last event was entered
 * @param siteName what the user calls the site
 * @param events how many events it has, withdrawn ones counted too
 */
public record NightSummary(NightId id, Instant begunAt, Instant lastAt, String siteName, long events) {}
