package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.operations.CommandRun;

/** Logging turns, and undoing or replacing wrong entries. */
class TurnedAndTakenBackTest {
    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeEach
    void beginTheNight() {
        person = new CommandRun(folder, "2026-01-15T17:30:00Z");
        person.good("begin", "--site", "54.60,-2.90,240", "--name", "Larkfell");
    }

    private CommandRun.Outcome type(String... words) {
        person.waitMinutes(12);
        return person.good(words);
    }

    @Test
    void undo_removesTheLastEvent() {
        type("sight", "compass", "3");
        type("sight", "scale", "54");
        JsonNode before = person.good("fix", "--json").json();
        type("sight", "still", "polaris", "--distance", "0.1", "--toward", "2", "--with", "finder");
        assertThat(person.good("fix", "--json").json()).isNotEqualTo(before);
        assertThat(type("undo").out()).startsWith("Logged #5: took back #4 (centre of rotation: Polaris 0.1 ");
        assertThat(person.good("fix", "--json").json()).isEqualTo(before);
        assertThat(person.good("log").out()).contains("(taken back)");
    }

    @Test
    void undoByNumber_removesThatEvent_andCanItselfBeUndone() {
        type("sight", "compass", "3");
        type("sight", "scale", "54");
        JsonNode before = person.good("fix", "--json").json();
        assertThat(type("undo", "2").out()).startsWith("Logged #4: took back #2 (compass ");
        CommandRun.Outcome again = person.run("undo", "2");
        assertThat(again.complaint())
                .isEqualTo("polewright undo: #2 is already taken back: to restore it, take back #4 with polewright"
                        + " undo.");
        assertThat(again.status()).isEqualTo(1);
        assertThat(person.good("fix", "--json").json().get("status").textValue())
                .isEqualTo("underdetermined");
        assertThat(type("undo", "4").out()).startsWith("Logged #5: took back #4 (took back #2, which counts again).\n");
        assertThat(person.good("fix", "--json").json()).isEqualTo(before);
    }

    @ParameterizedTest
    @CsvSource({
        "1.25, 1.25",
        "1 1/4, 1.25",
        "3/8 ccw, -0.375",
        "2 cw, 2",
        "-1, -1",
        "1 anti-clockwise, -1",
        "+.5, 0.5",
        "1 counterclockwise, -1",
    })
    void turns_areReadAsWritten(String typed, double expected) {
        type("turn", "--azimuth", typed);
        JsonNode turn = person.good("log", "--json").json().get(1);
        assertThat(turn.get("azimuth_turns").doubleValue()).isEqualTo(expected);
    }

    @Test
    void wrongTurn_isReplacedInPlace() {
        type("begin", "--site", "54.60,-2.90,240", "--name", "Larkfell");
        type("sight", "compass", "3");
        type("turn", "--azimuth", "1 3/4 ccw");
        type("sight", "drift", "rigel", "--minutes", "5", "--moved", "3", "--toward", "s", "--with", "reticle");

        assertThat(type("turn", "--instead-of", "3", "--azimuth", "1 3/4").out())
                .startsWith("Logged #5: in place of #3: turned azimuth 1 3/4 turns clockwise.\n");

        assertThat(type("log").out()).contains("#5").contains("in place of #3: turned azimuth 1 3/4 turns clockwise");
        CommandRun.Outcome notATurn = person.run("turn", "--instead-of", "2", "--azimuth", "1");
        assertThat(notATurn.status()).isEqualTo(1);
        assertThat(notATurn.err())
                .isEqualTo("polewright turn: event 2 is not a turn of the screws, so no turn can replace it. Give the"
                        + " number of a turn, as the log shows it.\n");
    }
}
