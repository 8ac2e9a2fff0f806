package polewright.store;

import polewright.session.NightId;
import polewright.session.event.LoggedEvent;

/**
 * The result of a submission key.
 *
 * @param night the night that it was added to
 * @param event the event; the first if there were several
 */
public record Submission(NightId night, LoggedEvent event) {}
