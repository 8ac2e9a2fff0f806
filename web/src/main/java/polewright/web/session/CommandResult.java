package polewright.web.session;

import java.util.List;
import java.util.regex.Pattern;
import polewright.operations.ExitStatus;
import polewright.report.json.NotesJson;
import polewright.web.form.CommandForm;
import polewright.web.form.FormComplaint;

/**
 * What came of a command.
 *
 * @param status one of {@link ExitStatus}
 * @param out its result
 * @param lines what it complained of, line by line, as a terminal shows it
 */
public record CommandResult(int status, String out, List<String> lines) {
    private static final Pattern TAG = Pattern.compile("^[A-Z]+ +");

    public CommandResult {
        lines = List.copyOf(lines);
    }

    /** What it complained of, as a page says it. */
    public List<String> complaints() {
        return lines.stream().map(FormComplaint::withoutForm).toList();
    }

    /** The same for the page with the form that typed the command. */
    public List<String> complaints(CommandForm form) {
        return lines.stream().map(line -> FormComplaint.of(form, line)).toList();
    }

    /** What a result in JSON has to say besides, as a page says it, without the tags of a terminal. */
    public List<String> notes() {
        return NotesJson.of(out).stream()
                .map(note -> FormComplaint.withoutForm(TAG.matcher(note).replaceFirst("")))
                .toList();
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
