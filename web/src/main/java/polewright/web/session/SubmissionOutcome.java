package polewright.web.session;

import java.util.List;

/** The outcome of a posted form. */
public sealed interface SubmissionOutcome {
    /**
     * The event is in the log.
     *
     * @param seq its number there
     * @param notes remarks on it, for example that the Sun is near
     */
    record Logged(long seq, List<String> notes) implements SubmissionOutcome {
        public Logged {
            notes = List.copyOf(notes);
        }
    }

    /** Nothing was logged, and why. */
    record Refused(List<String> complaints) implements SubmissionOutcome {
        public Refused {
            complaints = List.copyOf(complaints);
        }
    }

    /** An entry looks like a mistake: it is not logged until confirmed. */
    record ToBeConfirmed(List<String> complaints) implements SubmissionOutcome {
        public ToBeConfirmed {
            complaints = List.copyOf(complaints);
        }
    }

    /** The log can be neither read nor written at the moment, and why. */
    record NotNow(List<String> complaints) implements SubmissionOutcome {
        public NotNow {
            complaints = List.copyOf(complaints);
        }
    }

    /**
     * Something else was logged since the page was shown, which may therefore be out of date; the complaints give the
     * details.
     */
    record Outdated(List<String> complaints) implements SubmissionOutcome {
        public Outdated {
            complaints = List.copyOf(complaints);
        }
    }
}
