package polewright.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The script {@code polewright} on a machine that lacks what it needs. */
class LauncherTest {
    private static final Path LAUNCHER = Path.of("..", "polewright");
    private static final String[] TOOLS = {
        "sh", "dirname", "sed", "head", "id", "readlink", "find", "mktemp", "tail", "rm", "touch", "cat"
    };

    @TempDir
    private Path machine;

    private Path tools;

    private record Ended(int status, String text) {}

    /** A folder of tools without Java, and the script beside no sources; where Debian keeps its Javas is empty too. */
    @BeforeEach
    void aBareMachine() throws IOException {
        tools = Files.createDirectory(machine.resolve("tools"));
        for (String tool : TOOLS) {
            program(tools.resolve(tool), "exec /usr/bin/" + tool + " \"$@\"\n");
        }
        String script = Files.readString(LAUNCHER);
        assertThat(script).contains("/usr/lib/jvm/*/bin/java");
        Files.writeString(
                machine.resolve("polewright"),
                script.replace("/usr/lib/jvm/", machine.resolve("jvm").toString() + "/"));
    }

    private Ended run(Map<String, String> environment, String... typed) throws IOException, InterruptedException {
        String[] command = new String[typed.length + 2];
        command[0] = "/bin/sh";
        command[1] = machine.resolve("polewright").toString();
        System.arraycopy(typed, 0, command, 2, typed.length);
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        builder.environment().clear();
        builder.environment().put("PATH", tools.toString());
        builder.environment().putAll(environment);
        Process process = builder.start();
        String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return new Ended(process.waitFor(), text);
    }

    /** A java that only tells its version, or what it was started with. */
    private void pretendJava(Path folder, int version) throws IOException {
        Files.createDirectories(folder);
        program(folder.resolve("java"), """
                case "$*" in -version) echo 'openjdk version "%d.0.1" 2026-01-01' >&2 ;;
                *) echo "LC_ALL=${LC_ALL-} $*" ;; esac
                """.formatted(version));
    }

    private static void program(Path file, String script) throws IOException {
        Files.writeString(file, "#!/bin/sh\n" + script);
        assertThat(file.toFile().setExecutable(true)).isTrue();
    }

    @Test
    void withoutJavaItSaysTheDebianCommand() throws Exception {
        Ended ended = run(Map.of(), "demo");
        assertThat(ended.text()).isEqualTo("""
                        polewright: Java 17 or newer is missing. On Debian:
                          sudo apt-get install -y openjdk-17-jdk-headless maven     (or: sudo ./polewright --setup)
                        """);
        assertThat(ended.status()).isEqualTo(1);
    }

    @Test
    void anOlderJavaDoesNotDo() throws Exception {
        pretendJava(machine.resolve("tools"), 11);
        Ended ended = run(Map.of(), "demo");
        assertThat(ended.text()).startsWith("polewright: Java 17 or newer is missing.");
        assertThat(ended.status()).isEqualTo(1);
    }

    @Test
    void withoutACompilerItSaysWhatBuildingNeeds() throws Exception {
        pretendJava(machine.resolve("tools"), 17);
        Ended ended = run(Map.of(), "demo");
        assertThat(ended.text()).isEqualTo("""
                        polewright: it has to be built first, which needs a JDK and Maven. On Debian:
                          sudo apt-get install -y openjdk-17-jdk-headless maven     (or: sudo ./polewright --setup)
                        """);
        assertThat(ended.status()).isEqualTo(1);
    }

    @Test
    void builtOnceItRunsWithAnyNewerJavaAndKeepsWordsWhole() throws Exception {
        pretendJava(machine.resolve("jvm/some/bin"), 21);
        Path jar = machine.resolve("app/target/polewright-runnable.jar");
        Files.createDirectories(jar.getParent());
        Files.createFile(jar);
        Ended ended = run(Map.of("LC_ALL", "C"), "note", "two words");
        assertThat(ended.status()).isZero();
        assertThat(ended.text()).startsWith("LC_ALL=C.UTF-8 ").endsWith("-jar " + jar + " note two words\n");
        assertThat(run(Map.of("LANG", "en_GB.UTF-8"), "log").text()).startsWith("LC_ALL= ");
    }

    @Test
    void framesGetTheThoroughCompilerAndAnythingElseTheQuickOne() throws Exception {
        pretendJava(machine.resolve("jvm/some/bin"), 17);
        Path jar = machine.resolve("app/target/polewright-runnable.jar");
        Files.createDirectories(jar.getParent());
        Files.createFile(jar);
        for (String[] typed : new String[][] {
            {"attitude", "a.fits"}, {"axis", "a.fits", "b.fits"}, {"sight", "frames", "a.fits"}, {"watch", "."}
        }) {
            assertThat(run(Map.of(), typed).text()).doesNotContain("TieredStopAtLevel");
        }
        for (String[] typed : new String[][] {{"where", "vega"}, {"sight", "compass", "3"}, {}}) {
            assertThat(run(Map.of(), typed).text()).contains("-XX:TieredStopAtLevel=1");
        }
    }
}
