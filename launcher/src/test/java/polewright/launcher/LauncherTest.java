package polewright.launcher;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The script {@code polewright} on a machine that lacks what it needs. */
class LauncherTest {
    private static final Path LAUNCHER = Path.of("..", "polewright");
    private static final String[] TOOLS = {
        "sh",
        "dirname",
        "sed",
        "head",
        "id",
        "readlink",
        "find",
        "mktemp",
        "tail",
        "rm",
        "touch",
        "cat",
        "mkdir",
        "mv",
        "flock"
    };

    @TempDir
    private Path machine;

    private Path tools;

    private record Ended(int status, String text) {}

    /** A tool folder without Java, and the script without sources next to it; Debian's Java folder is empty too. */
    @BeforeEach
    void setUpBareMachine() throws IOException {
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
        Process process = start(environment, typed);
        String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return new Ended(process.waitFor(), text);
    }

    private Process start(Map<String, String> environment, String... typed) throws IOException {
        String[] command = new String[typed.length + 2];
        command[0] = "/bin/sh";
        command[1] = machine.resolve("polewright").toString();
        System.arraycopy(typed, 0, command, 2, typed.length);
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        builder.environment().clear();
        builder.environment().put("PATH", tools.toString());
        builder.environment().putAll(environment);
        return builder.start();
    }

    /** A fake java that prints only its version or the arguments it was started with. */
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
    void withoutJava_namesTheDebianPackage() throws Exception {
        Ended ended = run(Map.of(), "demo");
        assertThat(ended.text()).isEqualTo("""
                        polewright: Java 17 or newer is missing. On Debian:
                          sudo apt-get install -y openjdk-17-jdk-headless maven     (or: sudo ./polewright --setup)
                        """);
        assertThat(ended.status()).isEqualTo(1);
    }

    @Test
    void olderJava_isRefused() throws Exception {
        pretendJava(machine.resolve("tools"), 11);
        Ended ended = run(Map.of(), "demo");
        assertThat(ended.text()).startsWith("polewright: Java 17 or newer is missing.");
        assertThat(ended.status()).isEqualTo(1);
    }

    @Test
    void withoutACompiler_saysWhatBuildingNeeds() throws Exception {
        pretendJava(machine.resolve("tools"), 17);
        Ended ended = run(Map.of(), "demo");
        assertThat(ended.text()).isEqualTo("""
                        polewright: it has to be built first, which needs a JDK and Maven. On Debian:
                          sudo apt-get install -y openjdk-17-jdk-headless maven     (or: sudo ./polewright --setup)
                        """);
        assertThat(ended.status()).isEqualTo(1);
    }

    @Test
    void builtProgram_runsWithAnyNewerJava_andKeepsArgumentsIntact() throws Exception {
        pretendJava(machine.resolve("jvm/some/bin"), 21);
        Path jar = machine.resolve("launcher/target/polewright-runnable.jar");
        Files.createDirectories(jar.getParent());
        Files.createFile(jar);
        Ended ended = run(Map.of("LC_ALL", "C"), "note", "two words");
        assertThat(ended.status()).isZero();
        assertThat(ended.text()).startsWith("LC_ALL=C.UTF-8 ").endsWith("-jar " + jar + " note two words\n");
        assertThat(run(Map.of("LANG", "en_GB.UTF-8"), "log").text()).startsWith("LC_ALL= ");
    }

    @Test
    void starPatterns_areCachedNextToTheProgram() throws Exception {
        pretendJava(machine.resolve("jvm/some/bin"), 17);
        Path jar = machine.resolve("launcher/target/polewright-runnable.jar");
        Files.createDirectories(jar.getParent());
        Files.createFile(jar);
        assertThat(run(Map.of(), "attitude", "a.fits").text())
                .contains(" -Dpolewright.patterns=" + jar.resolveSibling("polewright-patterns.bin") + " ");
    }

    @Test
    void watch_usesTheOptimisingCompiler_otherCommandsTheFastOne() throws Exception {
        pretendJava(machine.resolve("jvm/some/bin"), 17);
        Path jar = machine.resolve("launcher/target/polewright-runnable.jar");
        Files.createDirectories(jar.getParent());
        Files.createFile(jar);
        assertThat(run(Map.of(), "watch", ".").text()).doesNotContain("TieredStopAtLevel");
        for (String[] typed : new String[][] {
            {"attitude", "a.fits"}, {"sight", "frames", "a.fits"}, {"where", "vega"}, {"sight", "compass", "3"}, {}
        }) {
            assertThat(run(Map.of(), typed).text()).contains("-XX:TieredStopAtLevel=1");
        }
        // Frames may be large under either compiler.
        for (String command : new String[] {"attitude", "axis", "watch"}) {
            assertThat(run(Map.of(), command, "a.fits").text()).contains("-XX:MaxRAMPercentage=50");
        }
    }

    private void pretendCompiler(Path folder) throws IOException {
        pretendJava(folder, 17);
        program(folder.resolve("javac"), "");
    }

    /**
     * A fake Maven that records which Java it builds with and then makes the jar; {@code inBetween} runs before the
     * jar is made.
     */
    private void pretendMaven(String inBetween) throws IOException {
        Files.createFile(machine.resolve("pom.xml"));
        program(
                tools.resolve("mvn"),
                "echo \"$JAVA_HOME\" >>" + machine.resolve("built") + "\n" + inBetween
                        + "\necho jar >launcher/target/polewright-runnable.jar\n");
    }

    private List<String> built() throws IOException {
        Path built = machine.resolve("built");
        return Files.exists(built) ? Files.readAllLines(built) : List.of();
    }

    @Test
    void build_usesAJavaThatCanCompile_evenIfTheFirstCannot() throws Exception {
        pretendJava(machine.resolve("old/bin"), 11);
        pretendJava(tools, 17);
        pretendCompiler(machine.resolve("jvm/whole/bin"));
        pretendMaven("");
        Ended ended = run(Map.of("JAVA_HOME", machine.resolve("old").toString()), "log");
        assertThat(ended.text()).startsWith("Building Polewright").endsWith(" log\n");
        assertThat(ended.status()).isZero();
        assertThat(built()).containsExactly(machine.resolve("jvm/whole").toString());
        assertThat(run(Map.of(), "log").text()).doesNotContain("Building");
    }

    @Test
    void twoSimultaneousStarts_buildOnce_whileTheOtherWaits() throws Exception {
        pretendCompiler(machine.resolve("jvm/whole/bin"));
        Path go = machine.resolve("go");
        pretendMaven("until [ -e " + go + " ]; do /usr/bin/sleep 0.1; done");
        Process first = start(Map.of(), "log");
        Process second = null;
        try {
            assertThat(first.inputReader().readLine()).startsWith("Building Polewright");
            second = start(Map.of(), "log");
            BufferedReader output = second.inputReader();
            assertThat(output.readLine()).isEqualTo("Another start is building; waiting for it ...");
            Files.write(go, new byte[0]);
            assertThat(output.readLine()).as("it has nothing to build then").endsWith(" log");
            assertThat(first.waitFor()).isZero();
            assertThat(second.waitFor()).isZero();
            assertThat(built()).hasSize(1);
        } finally {
            // Created even if the build fails: the fake build looks for it.
            Files.write(go, new byte[0]);
            first.destroyForcibly();
            if (second != null) {
                second.destroyForcibly();
            }
        }
    }

    @Test
    void interruptedBuild_isRepeated() throws Exception {
        pretendCompiler(machine.resolve("jvm/whole/bin"));
        pretendMaven(
                "if [ ! -e broken ]; then echo half >launcher/target/polewright-runnable.jar; echo >broken; exit 1; fi");
        assertThat(run(Map.of(), "log").status()).isEqualTo(1);
        assertThat(run(Map.of(), "log").status()).isZero();
        assertThat(built()).hasSize(2);
        assertThat(run(Map.of(), "log").text()).doesNotContain("Building");
    }

    /** A user's checkout, and temporary root rights. */
    private Map<String, String> sudo() throws IOException {
        program(tools.resolve("id"), "echo 0\n");
        program(tools.resolve("stat"), "echo 1000\n");
        program(tools.resolve("apt-get"), "");
        pretendCompiler(machine.resolve("jvm/whole/bin"));
        pretendMaven("");
        return Map.of("SUDO_UID", "1000", "SUDO_GID", "1001");
    }

    @Test
    void sudo_buildsAsTheInvokingUser() throws Exception {
        Map<String, String> sudo = sudo();
        Path asked = machine.resolve("asked");
        program(tools.resolve("setpriv"), """
                while :; do case "$1" in --*) echo "$1" >>%s; shift ;; *) break ;; esac; done
                unset SUDO_UID SUDO_GID
                exec "$@"
                """.formatted(asked));
        Ended ended = run(sudo, "--setup");
        assertThat(ended.text()).startsWith("Building Polewright").endsWith(" --version\n");
        assertThat(ended.status()).isZero();
        assertThat(Files.readAllLines(asked))
                .containsExactly("--reuid=1000", "--regid=1001", "--init-groups", "--reset-env");
        assertThat(built()).hasSize(1);
    }

    @Test
    void sudo_doesNotBuild_ifRootCannotBecomeTheInvokingUser() throws Exception {
        Ended ended = run(sudo(), "--setup");
        assertThat(ended.text()).isEqualTo("""
                        polewright: it is not built yet; root would leave files in your folder that only root can change.
                        Now run it as yourself, without sudo: ./polewright demo
                        """);
        assertThat(ended.status()).isZero();
        assertThat(built()).isEmpty();
    }
}
