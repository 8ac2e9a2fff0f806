package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.operations.CommandRun;

/** Entered figures keep their decimals in the log and when they are undone. */
class TypedFiguresTest {
    private CommandRun person;

    @BeforeEach
    void beginNight(@TempDir Path folder) {
        person = CommandRun.begun(folder, "2026-01-15T20:00:00Z", "54.60,-2.9025,240");
    }

    @ParameterizedTest
    @CsvSource(
            delimiterString = " => ",
            value = {
                "sight drift rigel --minutes 5 --moved 0.04 --unit fields --toward south --field 0.8 => drift: Rigel"
                        + " 0.04 field widths south in 5 minutes",
                "sight drift rigel --minutes 7.25 --moved 0.125 --unit arcsec --toward 4.25 --view erect => drift:"
                        + " Rigel 0.125 arcseconds toward 4.25 o'clock in 7.25 minutes",
                "sight still polaris --distance 0.004 --toward 4.25 --with finder => centre of rotation: Polaris"
                        + " 0.004 field widths toward 4.25 o'clock, view inverted",
                "sight still polaris --distance 0.25 --toward 4.5 --with finder => centre of rotation: Polaris 0.25"
                        + " field widths toward half past 4, view inverted",
                "sight still polaris --distance 0.2200973 --toward 6.7968253 --with finder => centre of rotation:"
                        + " Polaris 0.22 field widths toward 7 o'clock, view inverted",
                "sight compass 3.25 --declination -1.04 => compass 3.25°, declination -1.04°",
                "sight scale 54.04 => level and scale 54.04°",
                "sight scale 54 => level and scale 54.0°",
                "sight bearing capella 0.04 --as-typed => axis 0.04° clockwise of the line toward Capella",
                "sight altitude capella -20.25 => axis -20.25° above Capella",
                "turn --azimuth 0.04 => turned azimuth 0.04 turn clockwise",
            })
    void figure_isShownAsTyped(String typed, String shown) {
        person.good(typed.split(" "));
        assertThat(flat(person.good("log").out())).contains("#2 20:00 UTC " + shown);
        assertThat(flat(person.good("undo").out())).contains("took back #2 (" + shown + ")");
    }

    @Test
    void skylineCorner_isShownAsTyped() {
        person.good("horizon", "0,0.04", "95.25,22.55");
        assertThat(person.good("horizon").out()).contains("0.04° high", "azimuth 95.25° ", "22.55° high");
    }

    @Test
    void site_keepsAllDecimals() {
        assertThat(flat(person.good("ground").out())).contains("54.60° N, 2.9025° W, 240 m");
    }

    @Test
    void beginWithWork_omitsTheLimitThatWorkReplaces() {
        person.good("begin", "--again", "--for", "casual", "look");
        assertThat(person.good("log").lines().get(0)).endsWith(" with fork");
        assertThat(person.good("log").lines().get(1)).endsWith("work: a casual look");
        String file = person.file("night.jsonl").toString();
        person.good("log", "export", file);
        assertThat(person.good("replay", file).lines().get(0)).endsWith(" with fork.");
    }

    private static String flat(String text) {
        return text.strip().replaceAll("\\s+", " ");
    }
}
