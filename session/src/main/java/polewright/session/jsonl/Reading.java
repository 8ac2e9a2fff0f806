package polewright.session.jsonl;

import java.util.List;
import polewright.session.event.LoggedEvent;
import polewright.sky.InputRefused;

/** The result of reading a file: all of it or nothing. */
public sealed interface Reading {
    /** Every line was valid, and so was their order. */
    record Accepted(List<LoggedEvent> events) implements Reading {
        public Accepted {
            events = List.copyOf(events);
        }
    }

    /** The first error; its message starts with the line. */
    record Refused(InputRefused why) implements Reading {}

    /** The events; throws the refusal if there is one. */
    default List<LoggedEvent> orThrow() {
        if (this instanceof Accepted accepted) {
            return accepted.events();
        }
        throw ((Refused) this).why();
    }
}
