package polewright.operations;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The log's location depends only on the environment, never on the folder in which a command is typed. */
class WorkbenchTest {
    private static Workbench with(Map<String, String> environment) {
        return new Workbench(
                Clock.systemUTC(),
                environment,
                new PrintWriter(new StringWriter()),
                new PrintWriter(new StringWriter()),
                false,
                Pause.REAL);
    }

    @Test
    void log_isInDataHomeOrUnderHomeOrWhereNamed() {
        assertThat(with(Map.of("HOME", "/home/me")).defaultLog())
                .isEqualTo(Path.of("/home/me/.local/share/polewright/nights.sqlite"));
        assertThat(with(Map.of("HOME", "/home/me", "XDG_DATA_HOME", "/data")).defaultLog())
                .isEqualTo(Path.of("/data/polewright/nights.sqlite"));
        assertThat(with(Map.of("HOME", "/home/me", "XDG_DATA_HOME", "data")).defaultLog())
                .isEqualTo(Path.of("/home/me/.local/share/polewright/nights.sqlite"));
        assertThat(with(Map.of("POLEWRIGHT_LOG", "/stick/nights.sqlite")).defaultLog())
                .isEqualTo(Path.of("/stick/nights.sqlite"));
    }

    @Test
    void withoutHome_theCurrentFolderIsNotUsed() {
        for (Map<String, String> environment :
                List.of(Map.<String, String>of(), Map.of("HOME", ""), Map.of("HOME", "me"))) {
            assertThatThrownBy(() -> with(environment).defaultLog())
                    .isInstanceOf(OperationFailed.class)
                    .hasMessage("your home folder is not known because HOME is not set. Set it, or name the log file"
                            + " with POLEWRIGHT_LOG or --log.");
        }
    }
}
