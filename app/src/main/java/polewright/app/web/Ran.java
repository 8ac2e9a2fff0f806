package polewright.app.web;

import java.util.List;
import polewright.app.ExitStatus;

/**
 * What came of a command.
 *
 * @param status one of {@link ExitStatus}
 * @param out its result
 * @param complaints what it complained of, line by line, without the command's name
 */
public record Ran(int status, String out, List<String> complaints) {
    public Ran {
        complaints = List.copyOf(complaints);
    }

    /** Whether the same may be done later: the log can be neither read nor written for the moment. */
    public boolean isNotNow() {
        return status == ExitStatus.NOT_NOW;
    }

    /** Whether the log is no longer as it was known. */
    public boolean isOutdated() {
        return status == ExitStatus.MOVED_ON;
    }

    /** Whether what was typed looks like a slip, and waits to be confirmed. */
    public boolean isToBeConfirmed() {
        return status == ExitStatus.LOOKS_MISTAKEN;
    }

    public boolean isGood() {
        return status == ExitStatus.GOOD;
    }
}
