package polewright.fuzz;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import polewright.operations.Pause;
import polewright.operations.Workbench;
import polewright.web.FormSubmission;
import polewright.web.form.CommandForm;
import polewright.web.form.CommandForms;
import polewright.web.form.FilledForm;
import polewright.web.session.NightSession;

/**
 * A form posted by a page, without the socket: the first line names the form, the rest is the body of the request. It
 * is decoded and its entries are parsed; there is no log, so it goes no further.
 */
final class FormTarget {
    private static final Map<String, CommandForm> FORMS = Stream.of(
                    CommandForms.all(), CommandForms.practice(), CommandForms.laptop())
            .flatMap(List::stream)
            .collect(Collectors.toMap(CommandForm::id, Function.identity()));
    private static final String NOWHERE = "/dev/null/polewright";
    private static final NightSession SESSION = NightSession.of(
            "",
            new Workbench(
                    Clock.fixed(Instant.parse("2026-11-25T20:00:00Z"), ZoneOffset.UTC),
                    Map.of("POLEWRIGHT_LOG", NOWHERE, "XDG_DATA_HOME", NOWHERE),
                    new PrintWriter(new StringWriter()),
                    new PrintWriter(new StringWriter()),
                    false,
                    Pause.REAL));

    private FormTarget() {}

    static void post(byte[] posted) {
        String text = new String(posted, StandardCharsets.UTF_8);
        int end = text.indexOf('\n');
        CommandForm form = FORMS.get(end < 0 ? text : text.substring(0, end));
        if (form == null) {
            return;
        }
        Map<String, String> filled =
                FilledForm.of(end < 0 ? "" : text.substring(end + 1)).fields();
        form.line(filled);
        FormSubmission.of(SESSION, form, filled);
    }
}
