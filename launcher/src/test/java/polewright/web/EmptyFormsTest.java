package polewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType;
import polewright.web.form.CommandForm;
import polewright.web.form.CommandForms;

/** Page language: an error in a form is reported once, by the labels of its fields, without option names. */
@Tag("slow")
class EmptyFormsTest {
    private static final Pattern ALERT =
            Pattern.compile("<div class=\"complaint\" role=\"alert\">(.*?)</div>", Pattern.DOTALL);
    private static final Pattern OPTION = Pattern.compile("--[a-z]|polewright [a-z]|[A-Z]{3,},[A-Z]{3,}|[A-Z]{3,}\\[");

    @TempDir
    private Path folder;

    private ServedNight night;
    private PageReader reader;

    @BeforeEach
    void serve() {
        night = new ServedNight(folder, "2026-11-25T20:00:00Z");
        reader = new PageReader(night);
    }

    @AfterEach
    void close() {
        night.close();
    }

    private HttpResponse<String> post(CommandForm form, Map<String, String> fields) throws Exception {
        Map<String, String> all = new HashMap<>(fields);
        all.put("key", form.id() + "-of-the-test");
        return reader.post("/do/" + form.id(), all);
    }

    private static List<CommandForm> everyForm() {
        return Stream.of(CommandForms.all(), CommandForms.practice(), CommandForms.laptop())
                .flatMap(List::stream)
                .toList();
    }

    /** The error messages of a page, one per paragraph. */
    private static List<String> complaints(String page) {
        List<String> complaints = new ArrayList<>();
        for (MatchResult alert : ALERT.matcher(page).results().toList()) {
            Pattern.compile("<p>(.*?)</p>", Pattern.DOTALL)
                    .matcher(alert.group(1))
                    .results()
                    .forEach(paragraph -> complaints.add(paragraph.group(1).replace("&#39;", "'")));
        }
        return complaints;
    }

    private void assertEveryFormUsesPageLanguage(Map<String, String> filled) throws Exception {
        int refused = 0;
        for (CommandForm form : everyForm()) {
            HttpResponse<String> answer = post(form, filled);
            if (answer.statusCode() == 303) {
                continue;
            }
            refused++;
            List<String> complaints = complaints(answer.body());
            assertThat(complaints).as(form.id()).hasSize(1);
            assertThat(complaints.get(0))
                    .as(form.id())
                    .doesNotContainPattern(OPTION)
                    .doesNotContain("..");
            assertThat(answer.body().replace("&#39;", "'").split(Pattern.quote(complaints.get(0)), -1))
                    .as(form.id())
                    .hasSize(2);
        }
        assertThat(refused).isGreaterThan(15);
    }

    @Test
    void emptyFormBeforeAnyNight_isAnsweredByItsLabels() throws Exception {
        assertEveryFormUsesPageLanguage(Map.of());
    }

    @Test
    void emptyFormInANight_isAnsweredByItsLabels() throws Exception {
        night.type("begin", "--site", "54.60,-2.90,240");
        night.type("clamp");
        assertEveryFormUsesPageLanguage(Map.of());
    }

    /** Every field of every form contains a value that it cannot accept. */
    @Test
    void formFilledWithNonsense_isAnsweredByItsLabels() throws Exception {
        night.type("begin", "--site", "54.60,-2.90,240");
        for (CommandForm form : everyForm()) {
            for (Argument<?> field : form.fields()) {
                if (field.type() instanceof ArgumentType.Tick || field.type() instanceof ArgumentType.Choice) {
                    continue;
                }
                Map<String, String> filled = form.fields().stream()
                        .filter(other -> other.isRequired() || other.equals(field))
                        .collect(Collectors.toMap(Argument::name, other -> usable(other, other.equals(field))));
                HttpResponse<String> answer = post(form, filled);
                if (answer.statusCode() != 303) {
                    assertThat(complaints(answer.body()))
                            .as(form.id() + " " + field.name())
                            .hasSize(1)
                            .first()
                            .asString()
                            .doesNotContainPattern(OPTION);
                }
            }
        }
    }

    private static String usable(Argument<?> field, boolean isNonsense) {
        return field.type() instanceof ArgumentType.Choice<?> choice
                ? choice.options().get(choice.options().size() - 1).value()
                : isNonsense ? "x1y" : "5";
    }

    @ParameterizedTest
    @CsvSource(
            delimiterString = " => ",
            quoteCharacter = '`',
            value = {
                "begin | => No site is known yet. Give 'Site' as latitude, longitude and height (degrees, north and east positive; metres).",
                "compass | => 'Bearing' is empty. Fill it in.",
                "clamp | => No night has begun yet. Use 'Begin a night' first.",
            })
    void beforeAnyNight(String form, String complaint) throws Exception {
        assertThat(complaintOf(form))
                .isEqualTo(
                        complaint.replace("LOG", folder.resolve("nights.sqlite").toString()));
    }

    @ParameterizedTest
    @CsvSource(
            delimiterString = " => ",
            quoteCharacter = '`',
            value = {
                "drift | star=rigel&minutes=5&moved=1&toward=south => The unit of the drift is missing. Use 'Seen"
                        + " through' for an optic that has a reticle, or 'Counted in' with arcsec, divisions, radii, fields"
                        + " or pixels.",
                "drift | star=rigel&minutes=abc&moved=1&toward=south => 'Time watched': 'abc' is not a number. Write"
                        + " digits, such as 5 or 2.5.",
                "scale | altitude=abc => 'Altitude on the scale': 'abc' is not a number. Write digits, such as 5 or"
                        + " 2.5.",
                "allow-look | name=moons => The field is not known. Give 'True field, edge to edge', or 'Eyepiece' as one of finder, eyepiece, reticle.",
                "allow-look | name=moons&field=1&at=2026-11-25T20:00Z => 'When it begins' needs a target."
                        + " Give 'Target'.",
                "begin | for=short+subs&again=yes => Short subs need a camera, and the rig has none. Give 'Focal length'"
                        + " and 'Pixel width', or add the camera to the rig file.",
                "unclamp | => The clamps are already loose. Tighten them with 'Clamps are tight'.",
                "allow-drop | name=ring => Nothing in tonight's work is called 'ring'. Set what tonight is for: 'What tonight is for'.",
            })
    void inANight(String form, String complaint) throws Exception {
        night.type("begin", "--site", "54.60,-2.90,240");
        assertThat(complaintOf(form)).isEqualTo(complaint);
    }

    private String complaintOf(String typed) throws Exception {
        String[] parts = typed.split("\\|", -1);
        CommandForm form = everyForm().stream()
                .filter(candidate -> candidate.id().equals(parts[0].strip()))
                .findFirst()
                .orElseThrow();
        Map<String, String> filled = Stream.of(parts[1].strip().split("&"))
                .filter(pair -> !pair.isEmpty())
                .map(pair -> pair.split("="))
                .collect(Collectors.toMap(pair -> pair[0], pair -> pair[1].replace('+', ' ')));
        return String.join("\n", complaints(post(form, filled).body()));
    }
}
