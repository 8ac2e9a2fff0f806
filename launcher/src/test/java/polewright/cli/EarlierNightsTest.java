package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.operations.CommandRun;

/** What the program learned from earlier nights in the log, applied when the next one begins. */
class EarlierNightsTest {
    // The altitude adjuster of a typical fork: 1.25 mm pitch, 180 mm from the pivot.
    private static final double DEGREES_PER_TURN = Math.toDegrees(Math.atan(1.25 / 180));

    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeEach
    void setUp() {
        person = new CommandRun(folder, "2026-01-25T20:00:00Z");
    }

    /**
     * A night on which the altitude adjuster moved the axis by {@code factor} times the nominal amount, and clamping
     * lowered the axis by 2′.
     */
    private void earlierNight(int day, double factor, String rig) throws IOException {
        double before = 52;
        double after = before + 6 * DEGREES_PER_TURN * factor;
        String night = String.format(Locale.ROOT, """
                {"at":"2026-01-%1$02dT18:00:00Z","event":"begin","site_name":"Larkfell","site":{"lat_deg":54.6,"lon_deg":-2.9}%5$s}
                {"at":"2026-01-%1$02dT18:10:00Z","event":"scale","altitude_deg":%2$.6f,"sigma_deg":0.006}
                {"at":"2026-01-%1$02dT18:20:00Z","event":"turn","altitude_turns":6}
                {"at":"2026-01-%1$02dT18:30:00Z","event":"scale","altitude_deg":%3$.6f,"sigma_deg":0.006}
                {"at":"2026-01-%1$02dT18:40:00Z","event":"clamp"}
                {"at":"2026-01-%1$02dT18:50:00Z","event":"scale","altitude_deg":%4$.6f,"sigma_deg":0.006}
                """, day, before, after, after - 2 / 60.0, rig);
        Path file = folder.resolve("night-" + day + ".jsonl");
        Files.writeString(file, night);
        person.good("log", "import", file.toString());
    }

    private String begin(String... more) {
        String[] words = new String[3 + more.length];
        words[0] = "begin";
        words[1] = "--site";
        words[2] = "54.60,-2.90,240";
        System.arraycopy(more, 0, words, 3, more.length);
        return person.good(words).out();
    }

    @Test
    void fourNights_areSummarisedInOneLine_andUsed() throws IOException {
        for (int day = 10; day < 14; day++) {
            earlierNight(day, 1.12, "");
        }

        String begun = begin();

        // Four clampings, each measured to about 1′: the estimate is still shrunk slightly toward zero.
        assertThat(begun.replaceAll("\\s+", " "))
                .contains("From 4 earlier nights: turning the altitude screw clockwise raises the axis; the altitude"
                        + " screw moves 12 % more than the rig file says; clamping"
                        + " usually lowers this axis 1.8′.");
        String fix = person.good("fix", "--json").out();
        assertThat(fix).contains("\"earlier_nights\"", "\"clampings\":4");
        assertThat(person.good("log", "--json").out()).contains("\"learned\"");
    }

    @Test
    void copyOfANight_addsNoInformation() throws IOException {
        earlierNight(10, 1.12, "");
        String once = begin();
        person.good("log", "import", folder.resolve("night-10.jsonl").toString());

        assertThat(begin("--again")).isEqualTo(once).contains("From an earlier night: ");
    }

    @Test
    void rigWithOtherScrews_startsWithoutHistory() throws IOException {
        for (int day = 10; day < 14; day++) {
            earlierNight(day, 1.12, "");
        }
        begin();
        Path file = folder.resolve("rig.json");
        String printed = person.good("rig").out();
        assertThat(printed).doesNotContain("learned");
        Files.writeString(file, printed.replace("\"arm_mm\" : 180", "\"arm_mm\" : 150"));
        assertThat(Files.readString(file)).isNotEqualTo(printed);

        assertThat(begin("--rig", file.toString(), "--again")).doesNotContain("earlier night");
        assertThat(person.good("fix", "--json").out()).doesNotContain("earlier_nights");
    }

    @Test
    void firstNight_doesNotMentionEarlierOnes() {
        assertThat(begin()).doesNotContain("earlier night");
    }
}
