package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.operations.CommandRun;
import polewright.operations.ExitStatus;

/** The Tab key, in the shells themselves. */
@Tag("slow")
class CompletionTest {
    /** Completes the line that is its second argument with the script that is its first, as bash does. */
    private static final String IN_BASH = """
            source "$1" 2>/dev/null
            compopt() { :; }
            COMP_LINE=$2
            COMP_POINT=${#2}
            read -ra COMP_WORDS <<<"$2"
            [[ "$2" != *" " ]] || COMP_WORDS+=("")
            COMP_CWORD=$((${#COMP_WORDS[@]} - 1))
            _complete_polewright
            printf '%s\\n' "${COMPREPLY[@]}"
            """;

    /** Types a line and the Tab key into a zsh with a terminal, then prints what the line has become. */
    private static final String IN_ZSH = """
            zmodload zsh/zpty
            zpty shell 'TERM=dumb zsh -f -i'
            zpty -w shell "unset zle_bracketed_paste; source $1; show() { print -r -- \\"[\\$BUFFER]\\"; BUFFER=; }"
            zpty -w shell "zle -N show; bindkey '^X' show; print REA''DY"
            zpty -r shell seen '*READY*'
            zpty -w -n shell "$2"$'\\t'$'\\x18'
            zpty -r shell seen '*\\[*\\]*'
            print -r -- "$seen"
            """;

    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeEach
    void prepare() throws IOException {
        person = new CommandRun(folder, "2026-11-25T20:05:00Z");
        Files.createFile(folder.resolve("night one.jsonl"));
        Files.createFile(folder.resolve("rig.json"));
    }

    private Path script(String shell) throws IOException {
        return Files.writeString(
                folder.resolve("script." + shell),
                person.good("completion", shell).out());
    }

    private List<String> inBash(String line) throws Exception {
        return run("bash", "--norc", "-c", IN_BASH, "bash", script("bash").toString(), line);
    }

    private List<String> run(String... words) throws Exception {
        Process shell = new ProcessBuilder(words)
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .start();
        shell.getOutputStream().close();
        String out = new String(shell.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(shell.waitFor()).as(out).isZero();
        return out.lines().toList();
    }

    @Test
    void commandsAndTheirCommands() throws Exception {
        assertThat(inBash("polewright ")).contains("ground", "sight", "serve", "completion");
        assertThat(inBash("polewright si")).containsExactly("sight", "site");
        assertThat(inBash("polewright sight dr")).containsExactly("drift", "drift-frames");
        assertThat(inBash("polewright practice look "))
                .contains("compass", "drift")
                .doesNotContain("sight");
    }

    @Test
    void options_andTheirChoices_inLowerCase() throws Exception {
        assertThat(inBash("polewright sight drift --to")).containsExactly("--toward");
        assertThat(inBash("polewright sight drift vega --unit ")).contains("radii", "arcsec");
        // Two options with the same placeholder in the help keep their own choices.
        assertThat(inBash("polewright rig correct --azimuth-clockwise ")).contains("left", "right");
        assertThat(inBash("polewright ground --mount fork")).containsExactly("fork-on-wedge", "fork-upright");
        assertThat(inBash("polewright skip cl")).containsExactly("cloud");
        assertThat(inBash("polewright completion ")).containsExactly("bash", "zsh");
    }

    @Test
    void files() throws Exception {
        assertThat(inBash("polewright begin --rig ri")).containsExactly("rig.json");
        assertThat(inBash("polewright log import ni")).containsExactly("night one.jsonl");
        assertThat(inBash("polewright sight frames rig.json ri")).containsExactly("rig.json");
    }

    @Test
    void choices_areAcceptedAsTheyAreOffered() {
        person.good("begin", "--site", "54.60,-2.90");
        person.good("rig", "correct", "--azimuth-clockwise", "left");
        person.good("ground", "--mount", "fork-on-wedge");
        person.good("skip", "no-instrument", "--sighting", "compass");
    }

    @ParameterizedTest
    @CsvSource({
        "polewright sight tr, polewright sight trail",
        "polewright sight drift --unit p, polewright sight drift --unit pixels",
        "polewright begin --rig ri, polewright begin --rig rig.json",
        "./polewright skip cl, ./polewright skip cloud",
    })
    void zsh_completesTheSame(String typed, String completed) throws Exception {
        assumeThat(Path.of("/usr/bin/zsh")).exists();
        List<String> seen = run("zsh", "-f", "-c", IN_ZSH, "zsh", script("zsh").toString(), typed);
        assertThat(String.join("\n", seen)).contains("[" + completed + " ]");
    }

    @Test
    void zsh_keepsItsOwnSettings() {
        assertThat(person.good("completion", "zsh").out()).doesNotContain("setopt", "alias compopt");
    }

    @Test
    void unknownShell_isRefused() {
        CommandRun.Outcome outcome = person.run("completion", "fish");
        assertThat(outcome.status()).isEqualTo(ExitStatus.WRONG_USAGE);
        assertThat(outcome.complaint()).contains("'fish' is not one of the choices. Use bash or zsh.");
    }
}
