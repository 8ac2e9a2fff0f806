package polewright.web.session;

import java.util.List;

/** What came of a form that was posted. */
public sealed interface SubmissionOutcome {
    /**
     * It is in the log.
     *
     * @param seq its number there
     * @param notes what is to be known about it, such as that the Sun is near
     */
    record Logged(long seq, List<String> notes) implements SubmissionOutcome {
        public Logged {
            notes = List.copyOf(notes);
        }
    }

    /** It is as it was, and why. */
    record Refused(List<String> complaints) implements SubmissionOutcome {
        public Refused {
            complaints = List.copyOf(complaints);
        }
    }

    /** What was filled in looks like a slip: it is not logged until it is confirmed. */
    record ToBeConfirmed(List<String> complaints) implements SubmissionOutcome {
        public ToBeConfirmed {
            complaints = List.copyOf(complaints);
        }
    }

    /** The log can be neither read nor written for the moment; why. */
    record NotNow(List<String> complaints) implements SubmissionOutcome {
        public NotNow {
            complaints = List.copyOf(complaints);
        }
    }

    /** Something else was logged since the page was shown, so that what it says may no longer be so; and what. */
    record Outdated(List<String> complaints) implements SubmissionOutcome {
        public Outdated {
            complaints = List.copyOf(complaints);
        }
    }
}
