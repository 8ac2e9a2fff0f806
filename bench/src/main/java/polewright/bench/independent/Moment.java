package polewright.bench.independent;

import java.util.List;
import polewright.bench.independent.truth.Offset;
import polewright.bench.independent.truth.Wedge;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;

/**
 * The night after one event.
 *
 * @param event as it was written
 * @param night what the code under test makes of the log
 * @param wedge as it truly is
 * @param minutes since the first event
 * @param right what should have been written until now, were it not for a mistake
 * @param slipped whether the mistake has been made
 */
record Moment(
        LoggedEvent event, NightState night, Wedge wedge, double minutes, List<LoggedEvent> right, boolean slipped) {
    Offset offset() {
        return wedge.offset();
    }
}
