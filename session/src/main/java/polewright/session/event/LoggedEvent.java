package polewright.session.event;

import java.time.Instant;

/**
 * An event in its place in the night.
 *
 * @param seq its number: 1 for the beginning of the night, rising from there (a shortened file may have gaps)
 * @param at when it was entered (a sighting carries its own time)
 * @param event what happened
 */
public record LoggedEvent(long seq, Instant at, NightEvent event) {}
