package polewright.web.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.operations.CommandRun;
import polewright.operations.action.FilledAction;
import polewright.operations.input.BodyFinder;
import polewright.operations.sighting.Replacement;
import polewright.session.event.Correction;
import polewright.session.event.NightEvent;
import polewright.session.jsonl.JsonLines;
import polewright.web.FormSubmission;
import polewright.web.session.NightSession;
import polewright.web.session.SubmissionOutcome;
import polewright.web.view.FormView;

/** The prefilled form of a logged measurement gives the same measurement again. */
class ReplacementFormTest {
    @TempDir
    private Path folder;

    private static NightEvent event(CommandRun person, int index) {
        return JsonLines.readLine(person.good("log", "--json").json().get(index).toString(), 0, new BodyFinder())
                .event();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "sight compass 4.2 --sigma 2",
                "sight scale 54.25",
                "sight shadow --body moon --sigma 1 14",
                "sight bearing vega 101.5",
                "sight altitude capella -- -3.25",
                "sight still polaris --distance 0.2 --toward 4.5 --with finder",
                "sight still polaris --distance 0.2 --toward 4.5 --field 5 --view mirrored --turned 30 --sigma 0.1",
                "sight drift capella --minutes 5 --moved 2.5 --toward s --with reticle",
                "sight drift capella --minutes 7.5 --moved 12 --unit arcsec --toward north --reticle slow --sigma 4",
                "sight drift capella --minutes 5 --moved 0.1 --unit fields --toward 6 --field 0.8 --view mirrored",
                "sight drift capella --minutes 5 --moved 7 --unit pixels --per 1.2 --toward 7 --west 3.5 --view"
                        + " mirrored",
                "sight trail capella --off 0.1 --toward south",
                "sight trail capella --off 0.25 --toward north --sigma 0.1",
                "centre capella --reads 79.5,46.2 --j2000 --through-pole --sigma 2",
                "centre 79.1723,45.998 --hour-angle --reads 341.25,46.2"
            })
    void prefilledForm_givesTheSameMeasurement(String typed) {
        CommandRun person = new CommandRun(folder, "2026-11-25T21:00:00Z");
        person.good("begin", "--site", "54.60,-2.90,240");
        List<String> words = new ArrayList<>(List.of(typed.split(" ")));
        words.addAll(
                words.indexOf("--") < 0 ? words.size() : words.indexOf("--"), List.of("--at", "2026-11-25T20:40:00Z"));
        if (typed.startsWith("sight")) {
            words.add(2, "--as-typed");
        }
        person.good(words.toArray(String[]::new));
        NightEvent.Measurement logged = (NightEvent.Measurement) event(person, 1);

        FilledAction entered = Replacement.filled(2, logged).orElseThrow();
        Map<String, String> filled = new HashMap<>(entered.typed());
        filled.put("key", "key-of-the-correction");
        filled.put(FormView.CONFIRMED, "yes");
        CommandForm form = CommandForms.of(entered).orElseThrow();
        assertThat(FormSubmission.of(NightSession.of("", person.workbench()), form, filled))
                .isInstanceOf(SubmissionOutcome.Logged.class);
        assertThat(event(person, 2)).isInstanceOf(Correction.MeasurementCorrected.class);
        Correction.MeasurementCorrected replaced = (Correction.MeasurementCorrected) event(person, 2);
        assertThat(Replacement.filled(2, replaced.meant())).contains(entered);
        assertThat(replaced.meant().seenAt()).isEqualTo(logged.seenAt());
    }
}
