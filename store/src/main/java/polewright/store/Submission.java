package polewright.store;

import polewright.session.NightId;
import polewright.session.event.LoggedEvent;

/**
 * What a key that was sent became.
 *
 * @param night the night that it went into
 * @param event the event; the first, when it became several
 */
public record Submission(NightId night, LoggedEvent event) {}
