package polewright.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every bench accepts the options listed in bench/README.md, and answers any other in one sentence. */
@Tag("slow")
class BenchOptionsTest {
    private static final Path FOLDER = Path.of("").toAbsolutePath();

    private record Ended(int status, String said) {}

    private static String text(String name) throws IOException {
        return Files.readString(FOLDER.resolve(name));
    }

    /** The names in the README's table. */
    private static List<String> listed() throws IOException {
        return rows("([a-z-]+)[` ]");
    }

    /** The benches with arguments of their own: `jmh NAME`. */
    private static List<String> withWords() throws IOException {
        return rows("([a-z-]+) [A-Z]");
    }

    private static List<String> rows(String name) throws IOException {
        Matcher row = Pattern.compile("(?m)^\\| `" + name).matcher(text("README.md"));
        List<String> names = new ArrayList<>();
        while (row.find()) {
            names.add(row.group(1));
        }
        return names.stream().distinct().toList();
    }

    static Stream<String> ofRandomTrials() throws IOException {
        List<String> names = new ArrayList<>();
        for (String name : listed()) {
            if (!withWords().contains(name)
                    && text(name).contains("\"$@\"")
                    && text(name).contains("--from")) {
                names.add(name);
            }
        }
        return names.stream();
    }

    /** The benches that print their own usage. */
    static Stream<String> withUsage() throws IOException {
        List<String> names = new ArrayList<>();
        for (String name : listed()) {
            if (text(name).contains("usage: bench/" + name)) {
                names.add(name);
            }
        }
        return names.stream();
    }

    static Stream<String> others() throws IOException {
        List<String> known = Stream.concat(ofRandomTrials(), withUsage()).toList();
        List<String> withWords = withWords();
        return listed().stream().filter(name -> !withWords.contains(name) && !known.contains(name));
    }

    private static Ended run(List<String> words) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(words)
                .redirectErrorStream(true)
                .directory(FOLDER.toFile())
                .start();
        process.getOutputStream().close();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        return new Ended(process.exitValue(), said);
    }

    /** Runs the program behind a script, without building it. */
    private static Ended program(String bench, String... words) throws IOException, InterruptedException {
        Matcher main = Pattern.compile("polewright\\.bench\\.[\\w.]+").matcher(text(bench));
        assertThat(main.find()).isTrue();
        List<String> line = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                main.group()));
        line.addAll(List.of(words));
        return run(line);
    }

    @Test
    void everyScript_isListed() throws IOException {
        try (var files = Files.list(FOLDER)) {
            List<String> scripts = files.filter(Files::isRegularFile)
                    .map(file -> file.getFileName().toString())
                    .filter(name -> !name.contains(".") && !name.equals("run"))
                    .toList();
            assertThat(new TreeSet<>(listed())).containsExactlyInAnyOrderElementsOf(scripts);
        }
    }

    @ParameterizedTest
    @MethodSource("ofRandomTrials")
    void seedsAndTheirCount_canBeChosen(String bench) throws IOException, InterruptedException {
        Ended ended = program(bench, "--from", "7", "--count", "3", "--help");
        assertThat(ended.said()).startsWith("Usage: bench/" + bench).contains("--from=SEED", "--count=N");
        assertThat(ended.status()).isZero();
    }

    @ParameterizedTest
    @MethodSource("ofRandomTrials")
    void wrongOption_isOneSentence(String bench) throws IOException, InterruptedException {
        Ended ended = program(bench, "--from", "seven");
        assertThat(ended.status()).as(ended.said()).isEqualTo(2);
        assertThat(ended.said()).startsWith("bench/" + bench + ": ").doesNotContain("\tat ");
    }

    @ParameterizedTest
    @MethodSource("withUsage")
    void benchWithOwnArguments_namesThem(String bench) throws IOException, InterruptedException {
        Ended ended = run(List.of("sh", bench, "--from", "seven"));
        assertThat(ended.status()).isEqualTo(2);
        assertThat(ended.said()).startsWith("usage: bench/" + bench + " ");
    }

    @ParameterizedTest
    @MethodSource("others")
    void benchWithoutRandomTrials_acceptsNoOption(String bench) throws IOException, InterruptedException {
        Ended ended = run(List.of("sh", bench, "--from", "7"));
        assertThat(ended.status()).isEqualTo(2);
        assertThat(ended.said()).isEqualTo("bench/" + bench + " takes no options.\n");
    }
}
