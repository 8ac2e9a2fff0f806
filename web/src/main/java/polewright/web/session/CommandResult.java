package polewright.web.session;

import java.util.List;
import java.util.regex.Pattern;
import polewright.operations.ExitStatus;
import polewright.report.json.NotesJson;
import polewright.web.form.CommandForm;
import polewright.web.form.FormComplaint;

/**
 * The result of a command.
 *
 * @param status one of {@link ExitStatus}
 * @param out its output
 * @param lines its complaints, line by line, as a terminal shows them
 */
public record CommandResult(int status, String out, List<String> lines) {
    private static final Pattern TAG = Pattern.compile("^[A-Z]+ +");

    public CommandResult {
        lines = List.copyOf(lines);
    }

    /** The complaints, worded for a page. */
    public List<String> complaints() {
        return lines.stream().map(FormComplaint::withoutForm).toList();
    }

    /** The complaints, worded for the page with the form that ran the command. */
    public List<String> complaints(CommandForm form) {
        return lines.stream().map(line -> FormComplaint.of(form, line)).toList();
    }

    /** Further notes in a JSON result, worded for a page, without the tags of a terminal. */
    public List<String> notes() {
        return NotesJson.of(out).stream()
                .map(note -> FormComplaint.withoutForm(TAG.matcher(note).replaceFirst("")))
                .toList();
    }

    /** Whether the command may be repeated later: the log can be neither read nor written at the moment. */
    public boolean isUnavailable() {
        return status == ExitStatus.NOT_NOW;
    }

    /** Whether the log has changed since the page was shown. */
    public boolean isOutdated() {
        return status == ExitStatus.MOVED_ON;
    }

    /** Whether an entry looks like a mistake and must be confirmed. */
    public boolean isToBeConfirmed() {
        return status == ExitStatus.LOOKS_MISTAKEN;
    }

    public boolean isGood() {
        return status == ExitStatus.GOOD;
    }
}
