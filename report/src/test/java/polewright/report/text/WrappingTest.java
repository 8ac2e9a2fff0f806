package polewright.report.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class WrappingTest {
    private static final String EIGHTY = "a".repeat(39) + " " + "b".repeat(40);

    @Test
    void fittingLine_isUnchanged() {
        assertThat(Wrapping.wrapped(List.of(EIGHTY, "", "  indented"))).containsExactly(EIGHTY, "", "  indented");
    }

    @Test
    void longLine_isBrokenBetweenWords() {
        assertThat(Wrapping.wrapped(List.of(EIGHTY + "b"))).containsExactly("a".repeat(39), "b".repeat(41));
    }

    @Test
    void continuation_isIndentedToTheTextAfterTheTag() {
        assertThat(Wrapping.wrapped(List.of("  WHY   " + EIGHTY)))
                .containsExactly("  WHY   " + "a".repeat(39), "        " + "b".repeat(40));
    }

    @Test
    void number_isATagToo() {
        assertThat(Wrapping.wrapped(List.of("#12  17:30 UTC  " + EIGHTY)))
                .containsExactly("#12  17:30 UTC  " + "a".repeat(39), " ".repeat(16) + "b".repeat(40));
    }

    @Test
    void command_isNotBroken() {
        String command = "polewright sight still polaris --distance 0.1";
        assertThat(Wrapping.wrapped(
                        List.of("THEN  log it then and there, all of it, with " + Wrapping.unbroken(command))))
                .containsExactly("THEN  log it then and there, all of it, with", "      " + command);
    }

    @Test
    void longCommand_continuesAfterABackslash() {
        String command =
                "polewright sight drift \"polaris australis\" --minutes 10 --moved N --toward WAY --with reticle";
        assertThat(Wrapping.wrapped(Wrapping.command(command)))
                .containsExactly(
                        "  polewright sight drift \"polaris australis\" --minutes 10 --moved N \\",
                        "      --toward WAY --with reticle");
        assertThat(Wrapping.wrapped(Wrapping.command("polewright sight scale ALTITUDE")))
                .containsExactly("  polewright sight scale ALTITUDE");
    }

    @Test
    void wordLongerThanALine_isKeptWhole() {
        String path = "/" + "p".repeat(90);
        assertThat(Wrapping.wrapped(List.of("LOOK  at " + path))).containsExactly("LOOK  at", "      " + path);
    }

    @Test
    void charactersOutsideTheBasicPlane_countAsOne() {
        String line = "\uD83D\uDD2D".repeat(79) + " x";
        assertThat(Wrapping.wrapped(List.of(line.substring(0, 158)))).hasSize(1);
    }
}
