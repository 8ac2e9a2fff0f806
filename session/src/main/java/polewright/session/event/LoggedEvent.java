package polewright.session.event;

import java.time.Instant;

/**
 * An event with its number in the night.
 *
 * @param seq its number: 1 for the beginning of the night, increasing from there (a shortened file may have gaps)
 * @param at time of entry (a sighting has its own time)
 * @param event what happened
 */
public record LoggedEvent(long seq, Instant at, NightEvent event) {}
