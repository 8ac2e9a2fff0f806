package polewright.cli;

import java.util.List;
import java.util.Optional;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;

/** The withdrawn events of a night. */
final class Withdrawals {
    private Withdrawals() {}

    /** The last event that withdrew this one and was not withdrawn itself. */
    static Optional<Long> by(List<LoggedEvent> night, long seq) {
        return night.stream()
                .filter(later -> later.event() instanceof NightEvent.Withdrawn withdrawn && withdrawn.seq() == seq)
                .map(LoggedEvent::seq)
                .filter(by -> by(night, by).isEmpty())
                .reduce((earlier, later) -> later);
    }
}
