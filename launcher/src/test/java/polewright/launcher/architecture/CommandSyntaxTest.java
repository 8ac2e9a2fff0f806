package polewright.launcher.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Below the faces no text names a command or an option: a page has neither, and a remedy there is a value. */
class CommandSyntaxTest {
    private static final Path ROOT = Path.of("..");
    private static final List<String> BELOW =
            List.of("sky", "image", "mount", "alignment", "drawing", "session", "store", "planning", "simulation");
    private static final Pattern TYPED = Pattern.compile("\"[^\"\n]*(?:--[a-z]{2}|\\bpolewright [a-z]{2})[^\"\n]*\"");

    @Test
    void textsBelowTheFaces_nameNoCommandOrOption() throws IOException {
        for (String module : BELOW) {
            try (Stream<Path> files = Files.walk(ROOT.resolve(module).resolve("src/main/java"))) {
                List<Path> sources =
                        files.filter(file -> file.toString().endsWith(".java")).toList();
                assertThat(sources).hasSizeGreaterThan(10);
                assertThat(sources).noneMatch(CommandSyntaxTest::namesSyntax);
            }
        }
    }

    @Test
    void commandSyntax_isFound() {
        assertThat("\"give it with --at, such as 20:00\"").matches(TYPED);
        assertThat("\"start it with: polewright begin\"").matches(TYPED);
        assertThat("\"a drift -- or none\"").doesNotMatch(TYPED);
        assertThat("i = --last;").doesNotContainPattern(TYPED);
    }

    private static boolean namesSyntax(Path source) {
        try {
            return TYPED.matcher(Files.readString(source)).find();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
