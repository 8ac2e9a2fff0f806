package polewright.session.jsonl;

import java.util.List;
import polewright.session.event.LoggedEvent;
import polewright.sky.InputRefused;

/** What came of reading a file: all of it or nothing. */
public sealed interface Reading {
    /** Every line was good, and their order too. */
    record Accepted(List<LoggedEvent> events) implements Reading {
        public Accepted {
            events = List.copyOf(events);
        }
    }

    /** The first thing that was wrong; its message begins with the line. */
    record Refused(InputRefused why) implements Reading {}

    /** The events, or the refusal thrown. */
    default List<LoggedEvent> orThrow() {
        if (this instanceof Accepted accepted) {
            return accepted.events();
        }
        throw ((Refused) this).why();
    }
}
