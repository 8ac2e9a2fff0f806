package polewright.launcher;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The whole process, with its output piped. */
class MainTest {
    @TempDir
    private Path folder;

    private record Ended(int status, String text) {}

    private Ended run(String... typed) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName()));
        command.addAll(List.of(typed));
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        builder.environment().put("LC_ALL", "C");
        builder.environment()
                .put("POLEWRIGHT_LOG", folder.resolve("nights.sqlite").toString());
        Process process = builder.start();
        String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return new Ended(process.waitFor(), text);
    }

    @Test
    void plainLocale_printsUtf8WithoutWarnings() throws Exception {
        Ended begun = run("begin", "--site", "54.6,-2.9", "--at", "2026-01-15T17:30Z");
        assertThat(begun.status()).isZero();
        assertThat(begun.text())
                .startsWith("Begun: a new site (54.60° N, 2.90° W, 0 m), fork (fork on a wedge), allowed\nwithin 5′ of"
                        + " the pole.\n");
    }

    @Test
    void error_setsTheExitStatus() throws Exception {
        Ended refused = run("where", "vega", "--site", "95,0");
        assertThat(refused.status()).isEqualTo(2);
        assertThat(refused.text()).startsWith("polewright where --site: latitude 95 is beyond 90 degrees");
    }
}
