package polewright.bench.independent;

import java.util.List;
import polewright.bench.independent.truth.Offset;
import polewright.bench.independent.truth.Wedge;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;

/**
 * The night after one event.
 *
 * @param event as it was logged
 * @param night the state that the code under test derives from the log
 * @param wedge its true state
 * @param minutes since the first event
 * @param right what should have been logged until now, without the mistake
 * @param slipped whether the mistake has been made
 */
record Moment(
        LoggedEvent event, NightState night, Wedge wedge, double minutes, List<LoggedEvent> right, boolean slipped) {
    Offset offset() {
        return wedge.offset();
    }
}
