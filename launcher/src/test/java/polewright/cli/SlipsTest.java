package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.operations.CommandRun;
import polewright.operations.CommandRun.Outcome;
import polewright.operations.ExitStatus;

/** Readings and sites that look like typing mistakes. */
class SlipsTest {
    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeEach
    void begin() {
        person = new CommandRun(folder, "2026-01-15T20:00:00Z");
        person.good("begin", "--site", "54.60,-2.90,240");
    }

    @ParameterizedTest
    @CsvSource({
        "scale, -53.5, 'level and scale -53.5° would put the axis'",
        "scale, 5.35, pole, which is at 54.6°",
        "compass, 120, in azimuth",
        "altitude, rigel, above the pole"
    })
    void readingFarFromThePole_isQuestioned_andLoggedOnceConfirmed(String kind, String read, String says) {
        String[] typed = kind.equals("altitude")
                ? new String[] {"sight", kind, read, "60"}
                : new String[] {"sight", kind, "--", read};
        Outcome question = person.run(typed);
        assertThat(question.status()).isEqualTo(ExitStatus.LOOKS_MISTAKEN);
        assertThat(question.out()).isEmpty();
        assertThat(question.err())
                .contains(says, "more than 15.0° off is unlikely. Read it again", "If it is right, add --as-typed.");
        assertThat(person.events()).isEqualTo(1);

        String[] confirmed = kind.equals("altitude")
                ? new String[] {"sight", kind, read, "60", "--as-typed"}
                : new String[] {"sight", kind, "--as-typed", "--", read};
        person.good(confirmed);
        assertThat(person.events()).isEqualTo(2);
    }

    @Test
    void starFarFromThePole_isNotACentreOfRotation() {
        assertThat(person.run("sight", "still", "capella", "--distance", "0.2", "--toward", "4", "--with", "finder")
                        .status())
                .isEqualTo(ExitStatus.LOOKS_MISTAKEN);
        person.good("sight", "still", "polaris", "--distance", "0.2", "--toward", "4", "--with", "finder");
    }

    @Test
    void excessiveTurns_areQuestioned() {
        Outcome question = person.run("turn", "--azimuth", "40");
        assertThat(question.status()).isEqualTo(ExitStatus.LOOKS_MISTAKEN);
        assertThat(question.complaint())
                .contains("40 turns of the azimuth screw is more than most wedges have. Check the number.");
        assertThat(person.good("turn", "--azimuth", "40", "--as-typed").out()).contains("Logged #");
    }

    @Test
    void contradictionOfTheOnlySighting_doesNotMentionOthers() {
        Outcome outcome = person.good("sight", "scale", "5.35", "--as-typed");
        // With latitude and longitude swapped, the axis would be this low.
        assertThat(outcome.out()).contains("sighting #2 is wrong").doesNotContain("the rest");
    }

    @Test
    void siteFarFromTheLast_isReported_withTheCommandToType() {
        Outcome swapped = person.good("begin", "--site", "-2.90,54.60,240");
        assertThat(swapped.out().replaceAll("\\s+", " "))
                .contains(
                        "NOTE 2.9° S, 54.6° E is 8",
                        "km from the last night's site. If you meant 54.6° N, 2.9° W, type --site 54.6,-2.9,240.");
        Outcome intended = new CommandRun(folder, "2026-01-16T20:00:00Z")
                .good("begin", "--site", "-43.95,170.40,710", "--as-typed");
        assertThat(intended.out()).doesNotContain("km from");
    }

    @Test
    void queryAboutADistantSite_isAccepted_butSwappedCoordinatesAreQuestioned() {
        assertThat(person.run("ground", "--site", "-43.95,170.40,710").err()).isEmpty();
        Outcome swapped = person.run("ground", "--site", "-2.90,54.60,240");
        assertThat(swapped.status()).isZero();
        assertThat(swapped.err()).contains("If you meant 54.6° N, 2.9° W, type --site 54.6,-2.9,240");
        assertThat(person.run("where", "vega", "--site", "54.60,-2.90", "--json")
                        .err())
                .isEmpty();
    }
}
