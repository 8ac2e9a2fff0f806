package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.operations.CommandRun;

@Tag("slow")
class TonightCommandTest {
    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeEach
    void beforeDark() {
        person = new CommandRun(folder, "2026-12-10T14:00:00Z");
        person.good("begin", "--site", "54.60,-2.90,240", "--name", "Larkfell");
    }

    @Test
    void firstLine_givesTheVerdict_andLinesFitTheScreen() {
        CommandRun.Outcome outcome = person.good("tonight", "--zone", "Europe/London");
        assertThat(outcome.lines().get(0)).startsWith("Worthwhile: 12 h 8 min of astronomical darkness, ");
        assertThat(outcome.lines()).allMatch(line -> line.length() <= 80);
        assertThat(outcome.out())
                .contains("  Sun sets                      15:46 GMT")
                .contains("By 15:01: set up tripod and wedge, level (polewright ground).");
        assertThat(outcome.out().replaceAll("\\s+", " "))
                .contains("The plan for a casual look, by altitude, moonlight, brightness and field of view. Weather"
                        + " is not considered.");
    }

    @Test
    void requestedTargets_arePlanned_orRefusedWithAReason() {
        person.good("target", "M 33");
        person.good("target", "M 8");
        String out = person.good("tonight", "--count", "3").out();
        assertThat(out)
                .contains("M 33")
                .contains("Not tonight: M 8 (Lagoon Nebula): even at its highest, below the horizon.");
        assertThat(person.good("log").out()).contains("wanted: M 33");
        assertThat(person.run("target", "sun").status()).isEqualTo(2);
        assertThat(person.run("tonight", "--target", "sun").complaint())
                .isEqualTo("polewright tonight: the Sun is not a target for the night: it burns eyes and cameras.");
    }

    /** Venus and Mercury used to be "best" at sunrise, each with a caution of its own. */
    @Test
    void sunrise_isNeverBest_andRequestedTargetsHaveOneCaution() {
        CommandRun morning = new CommandRun(folder.resolve("morning"), "2026-11-27T07:40:00Z");
        morning.good("begin", "--site", "54.60,-2.90,240", "--name", "Larkfell");
        String unasked = morning.good("tonight", "--zone", "UTC").out().replaceAll("\\s+", " ");
        assertThat(unasked).contains("Nothing to plan").doesNotContain("Venus", "CARE");
        String requested = morning.good("tonight", "--zone", "UTC", "--target", "venus", "--target", "mercury")
                .out()
                .replaceAll("\\s+", " ");
        assertThat(requested)
                .contains("Venus, planet")
                .containsPattern(
                        "CARE The Sun rises at 08:0[345] \\(Friday\\): move away and cap tube and finder before then\\."
                                + " Near the Sun: Mercury \\d+°\\.")
                .containsOnlyOnce("CARE");
    }

    @Test
    void targetsWashedOutByTheMoon_sayWhen() {
        CommandRun bright = new CommandRun(folder.resolve("bright"), "2026-11-26T18:00:00Z");
        bright.good("begin", "--site", "54.60,-2.90,240", "--name", "Larkfell");
        assertThat(bright.good("tonight").out().replaceAll("\\s+", " "))
                .containsPattern("bright Moon \\d+° away; in reach");
        // The Moon rises at 18:32 that day: before then nothing is washed out, afterwards every cluster is.
        CommandRun rising = new CommandRun(folder.resolve("rising"), "2026-11-27T12:30:00Z");
        rising.good("begin", "--site", "54.60,-2.90,240", "--name", "Larkfell");
        String plan = rising.good("tonight", "--zone", "UTC").out().replaceAll("\\s+", " ");
        assertThat(plan)
                .containsPattern("18:10 to 18:40: [^;]* up; magnitude [0-9.]+, [0-9]+′ (long|across); in reach")
                .containsPattern(
                        "(19|20):\\d\\d to \\d\\d:\\d\\d: [^;]*cluster [^;]* up; [^;]*bright Moon \\d+° away; in reach");
        assertThat(person.good("tonight").out()).doesNotContain("bright Moon");
    }

    /** A transit in daylight is the true transit, not the end of darkness. */
    @Test
    void transit_isSeparateFromTheBestTime() {
        String plan = person.good("tonight", "--count", "1", "--target", "M 13", "--zone", "UTC")
                .out()
                .replaceAll("\\s+", " ");
        assertThat(plan)
                .containsPattern("; best 06:\\d\\d \\(Friday\\); transits 11:\\d\\d \\(Friday\\) \\(by" + " day\\)\\.");
    }

    /** The planned targets depend on tonight's work, which is read from the log. */
    @Test
    void tonightsWork_isReadFromTheLog() {
        person.good("allow", "--for", "planets");
        assertThat(person.good("tonight", "--count", "3").out().replaceAll("\\s+", " "))
                .contains("The plan for planets at high power, by altitude")
                .contains("Saturn, planet")
                .contains("Jupiter, planet");
    }

    @Test
    void skyline_shortensTheWindows() throws IOException {
        String open = windows();
        person.good("horizon", "0,30");
        assertThat(windows()).isNotEqualTo(open);
    }

    private String windows() throws IOException {
        JsonNode plan = new ObjectMapper()
                .readTree(person.good("tonight", "--target", "M 31", "--json").out());
        for (JsonNode slot : plan.get("plan")) {
            if (slot.get("target").asText().startsWith("M 31")) {
                return slot.get("windows").toString();
            }
        }
        throw new AssertionError("M 31 is not planned: " + plan);
    }

    @Test
    void json_hasTheWholePlan() throws IOException {
        JsonNode plan = new ObjectMapper()
                .readTree(person.good("tonight", "--count", "5", "--json").out());
        assertThat(plan.get("plan").size()).isEqualTo(5);
        assertThat(plan.get("darkness").isObject()).isTrue();
        assertThat(plan.get("plan").get(0).has("transit")).isTrue();
    }

    @Test
    void htmlPlan_isWellFormedAndSelfContained() throws Exception {
        Path html = folder.resolve("tonight.html");
        person.good("tonight", "--plan", html.toString());
        String page = Files.readString(html);
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
        factory.newDocumentBuilder().parse(new ByteArrayInputStream(Files.readAllBytes(html)));
        assertThat(page.replace("http://www.w3.org/", "")).doesNotContain("http:", "https:", "src=", "@import");
        assertThat(page)
                .contains("<h1>Larkfell, night of 10 December 2026</h1>")
                .contains("<svg ");
        Path dark = folder.resolve("dark.html");
        person.good("tonight", "--dark", "--plan", dark.toString());
        assertThat(Files.readString(dark)).contains("background: #000000");
    }

    @Test
    void pdf_isOnePage_withReadableText() throws IOException {
        Path pdf = folder.resolve("tonight.pdf");
        CommandRun.Outcome outcome = person.good("tonight", "--plan", pdf.toString());
        assertThat(outcome.out()).endsWith("Written: " + pdf + "\n");
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            assertThat(document.getNumberOfPages()).isEqualTo(1);
            assertThat(new PDFTextStripper().getText(document))
                    .contains("Larkfell, night of 10 December 2026", "The plan for a casual look", "Also");
        }
    }

    @Test
    void nonsense_isRefused() {
        assertThat(person.run("tonight", "--plan", "tonight.txt").complaint())
                .isEqualTo(
                        "polewright tonight: the page tonight.txt is neither .html nor .pdf. Use one of these endings.");
        assertThat(person.run("tonight", "--count", "0").complaint())
                .isEqualTo("polewright tonight: 0 targets are outside 1 to 20.");
        assertThat(person.run("tonight", "--zone", "Larkfell").complaint())
                .isEqualTo("polewright tonight: 'Larkfell' is not a time zone. Write one such as Europe/London, +01:00"
                        + " or UTC.");
    }
}
