package polewright.night.event;

import java.time.Instant;

/**
 * An event in its place in the night.
 *
 * @param seq its number, from 1, rising by one
 * @param at when it was entered (a sighting carries its own time)
 * @param event what happened
 */
public record LoggedEvent(long seq, Instant at, NightEvent event) {}
