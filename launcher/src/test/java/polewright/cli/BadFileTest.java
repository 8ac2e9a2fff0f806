package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.operations.CommandRun;
import polewright.operations.CommandRun.Outcome;

/** Files that cannot be read or written: logs, nights and rigs. Each is named with the remedy, and none is changed. */
class BadFileTest {
    private static final String BEGIN =
            "{'at':'2026-01-15T17:30:00Z','event':'begin','site_name':'L','site':{'lat_deg':54.6,'lon_deg':-2.9}}\n";

    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeEach
    void begin() {
        person = new CommandRun(folder, "2026-01-15T20:00:00Z");
        person.good("begin", "--site", "54.60,-2.90,240");
    }

    @ParameterizedTest
    @CsvSource(
            delimiterString = " => ",
            quoteCharacter = '`',
            value = {
                "junk => line 1: column 1, near \"junk\", is not JSON. Write each event as one JSON object on a line"
                        + " of its own, as in docs/events.md.",
                "BEGIN{'at':'2026-01-15T18:41:00Z','event':'drift','star':'Rigel','minutes':0,'count':2,'unit':'arcseconds','toward':'south'} => line 2: a drift of 0 minutes is outside 0 to 360. Give how long the star was watched, at least a minute or two.",
                "BEGIN{'at':'2026-01-15T18:41:00Z','event':'drift','star':'Vegq','minutes':5,'count':2,'unit':'arcseconds','toward':'south'} => line 2: nothing in the sky is called 'Vegq'. Did you mean Vega?",
                "BEGIN{'at':'2026-01-15T18:41:00Z','event':'drift','star':'Canopus','minutes':5,'count':2,'unit':'arcseconds','toward':'south'} => event 2: Canopus was 30 degrees below the horizon at 2026-01-15T18:41:00Z. Check the name, the time (UTC) and the site. It would have been up if latitude and longitude of the site were exchanged.",
                "~ => there is no event in it. Give a file with one event a line, a begin first.",
            })
    void fileWithBadLine_isRefusedAsAWhole_withItsLine(String text, String complaint) throws IOException {
        Path file = person.file("night.jsonl");
        Files.writeString(file, text.replace("~", "").replace("BEGIN", BEGIN).replace('\'', '"'));
        assertFails("replay", complaint, "replay", file.toString());
        assertFails("log import", complaint, "log", "import", file.toString());
        assertThat(person.good("log", "nights").lines()).hasSize(1);
    }

    @Test
    void binaryFile_isRefused() throws IOException {
        Path file = person.file("picture.png");
        Files.write(file, new byte[] {(byte) 0x89, 'P', 'N', 'G', 0, (byte) 0xff});
        assertFails(
                "log import",
                file + " is not text in UTF-8. Save it as JSON Lines in UTF-8.",
                "log",
                "import",
                file.toString());
    }

    @Test
    void missingFile_isReported() {
        Path file = person.file("none.jsonl");
        assertFails("replay", file + " cannot be read. Check the name.", "replay", file.toString());
    }

    @Test
    void export_doesNotOverwriteAFile() throws IOException {
        Path file = Files.writeString(person.file("mine.jsonl"), "precious", StandardCharsets.UTF_8);
        assertFails("log export", file + " already exists. Name another file.", "log", "export", file.toString());
        assertThat(file).hasContent("precious");
    }

    @Test
    void exportIntoMissingFolder_isRefused() {
        Path file = person.file("no/night.jsonl");
        assertFails(
                "log export",
                file + " cannot be written: there is no folder " + file.getParent()
                        + ". Create it, or name a file in an existing folder.",
                "log",
                "export",
                file.toString());
    }

    @Test
    void missingOrInvalidRigFile_isReported() throws IOException {
        Path none = person.file("none.json");
        assertFails(
                "begin",
                "the rig file " + none
                        + " cannot be read. Check its name, or print one with polewright rig > rig.json.",
                "begin",
                "--rig",
                none.toString());
        Path wrong = Files.writeString(person.file("rig.json"), "{\"name\":\"x\"}");
        assertFails(
                "begin",
                wrong + ": rig file: kind is missing. Add it; docs/events.md describes it.",
                "begin",
                "--rig",
                wrong.toString());
        assertThat(person.good("log", "nights").lines()).hasSize(1);
    }

    @Test
    void fileThatIsNotALog_isNotChanged() throws IOException {
        Path file = Files.writeString(person.file("letter.txt"), "Dear");
        assertFails(
                "fix",
                file + " is not a Polewright log. Name another file; this one was not changed.",
                "fix",
                "--log",
                file.toString());
        assertThat(file).hasContent("Dear");
    }

    private void assertFails(String command, String complaint, String... typed) {
        Outcome outcome = person.run(typed);
        assertThat(outcome.err()).isEqualTo("polewright " + command + ": " + complaint + "\n");
        assertThat(outcome.status()).isEqualTo(1);
        assertThat(outcome.out()).isEmpty();
    }
}
