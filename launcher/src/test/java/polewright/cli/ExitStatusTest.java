package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.operations.CommandRun;
import polewright.operations.ExitStatus;

/** The exit status of each command, and where it is documented. */
class ExitStatusTest {
    private static final Pattern IN_HELP = Pattern.compile("(?m)^  (\\d)  (.+(?:\\n     .+)*)$");
    private static final Pattern IN_DOCS = Pattern.compile("(?m)^\\| (\\d) \\| (.+) \\|$");

    private CommandRun person;

    @BeforeEach
    void beginNight(@TempDir Path folder) {
        person = CommandRun.begun(folder, "2026-01-15T20:00:00Z", "54.60,-2.90,240");
    }

    @Test
    void helpAndReference_agreeOnAllExitStatuses() throws IOException {
        Map<Integer, String> inHelp = meanings(IN_HELP, person.good("--help").out());
        Path page = Path.of(System.getProperty("user.dir")).resolveSibling("docs/reference.md");
        assertThat(meanings(IN_DOCS, Files.readString(page).replace("`", ""))).isEqualTo(inHelp);
        assertThat(List.copyOf(inHelp.keySet())).isEqualTo(statuses());
    }

    private static Map<Integer, String> meanings(Pattern pattern, String text) {
        Map<Integer, String> meanings = new TreeMap<>();
        for (MatchResult found : pattern.matcher(text).results().toList()) {
            meanings.put(
                    Integer.valueOf(found.group(1)),
                    found.group(2).replaceAll("\\s+", " ").strip());
        }
        return meanings;
    }

    private static List<Integer> statuses() {
        List<Integer> statuses = new ArrayList<>();
        for (Field field : ExitStatus.class.getDeclaredFields()) {
            if (Modifier.isPublic(field.getModifiers())) {
                try {
                    statuses.add(field.getInt(null));
                } catch (IllegalAccessException e) {
                    throw new AssertionError(e);
                }
            }
        }
        return statuses.stream().sorted().toList();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "where vega",
                "ground",
                "tonight",
                "stars",
                "upright",
                "chart vega",
                "allow shot m42 --exposure 60 --focal-length 500 --pixel 4 --target vega",
                "sight compass 3",
                "sight drift rigel --minutes 5 --moved 1 --unit arcsec --toward n",
                "turn --azimuth 1",
                "clamp",
                "knock",
                "note dew",
                "centre rigel --reads 78.71,-8.12",
                "attitude frame.fits",
                "axis first.fits second.fits",
                "practice begin --site 54.60,-2.90"
            })
    void yearOutside1972To2100_gives2ForEveryCommand(String typed) {
        for (String year : List.of("1971", "2101")) {
            List<String> words = new ArrayList<>(List.of(typed.split(" ")));
            words.add("--at=" + year + "-11-25T20:00Z");
            CommandRun.Outcome outcome = person.run(words.toArray(String[]::new));
            assertThat(outcome.complaint())
                    .endsWith(" --at: the time " + year + "-11-25T20:00:00Z is outside 1972 to 2100. Check the year.");
            assertThat(outcome.status()).isEqualTo(ExitStatus.WRONG_USAGE);
        }
        assertThat(person.events()).isEqualTo(1);
    }
}
