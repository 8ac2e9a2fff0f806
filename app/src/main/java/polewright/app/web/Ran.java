package polewright.app.web;

import java.util.List;

/**
 * What came of a command.
 *
 * @param status 0 good, 1 the job failed, 2 what was typed cannot be used, 3 the log is no longer as
 *     whoever sent it knew it, 4 it can be neither read nor written for the moment
 * @param out its result
 * @param complaints what it complained of, line by line, without the command's name
 */
public record Ran(int status, String out, List<String> complaints) {
    public Ran {
        complaints = List.copyOf(complaints);
    }

    /** Whether the same may be done later: the log can be neither read nor written for the moment. */
    public boolean isNotNow() {
        return status == 4;
    }

    /** Whether the log is no longer as it was known. */
    public boolean isOutdated() {
        return status == 3;
    }

    public boolean isGood() {
        return status == 0;
    }
}
