package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import picocli.CommandLine;
import polewright.launcher.Main;
import polewright.operations.Pause;
import polewright.operations.Workbench;

/** The names that the documents set in backticks, and what they can refer to: sources, files and modules. */
final class DocumentedNames {
    static final Path ROOT = Path.of("..").toAbsolutePath().normalize();
    static final Path DOCS = ROOT.resolve("docs");
    static final List<String> MODULES = modules();

    private DocumentedNames() {}

    /** A name and its location. */
    record Span(Path document, String text) {
        String at() {
            return ROOT.relativize(document) + ": `" + text + "`";
        }
    }

    static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    static List<Path> documents() throws IOException {
        List<Path> found = new ArrayList<>(List.of(
                ROOT.resolve("README.md"),
                ROOT.resolve("CONTRIBUTING.md"),
                ROOT.resolve("bench").resolve("README.md"),
                DOCS.resolve("schema").resolve("README.md")));
        for (Path folder : List.of(DOCS, DOCS.resolve("decisions"))) {
            try (Stream<Path> docs = Files.list(folder)) {
                docs.filter(file -> file.toString().endsWith(".md")).sorted().forEach(found::add);
            }
        }
        return found;
    }

    static List<Span> spans() throws IOException {
        List<Span> spans = new ArrayList<>();
        for (Path document : documents()) {
            Matcher span = Pattern.compile("`([^`]+)`").matcher(read(document).replaceAll("(?ms)^```.*?^```$", ""));
            while (span.find()) {
                spans.add(new Span(document, span.group(1).replaceAll("\\s+", " ")));
            }
        }
        assertThat(spans).hasSizeGreaterThan(500);
        return spans;
    }

    static List<String> modules() {
        List<String> built = new ArrayList<>();
        Matcher module = Pattern.compile("<module>(.*)</module>").matcher(read(ROOT.resolve("pom.xml")));
        while (module.find()) {
            built.add(module.group(1));
        }
        return List.copyOf(built);
    }

    /** Sources by the simple name of their type. */
    static Map<String, String> sources() throws IOException {
        Map<String, String> sources = new HashMap<>();
        for (String module : MODULES) {
            try (Stream<Path> files = Files.walk(ROOT.resolve(module).resolve("src"))) {
                files.filter(file -> file.toString().endsWith(".java"))
                        .forEach(file -> sources.merge(
                                file.getFileName().toString().replace(".java", ""), read(file), String::concat));
            }
        }
        return sources;
    }

    /** The names of all files and folders under version control. */
    static Set<String> namesOfFiles() throws IOException {
        Set<String> names = new HashSet<>();
        Files.walkFileTree(ROOT, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
                String name = folder.getFileName().toString();
                if (name.equals("target") || name.equals(".git")) {
                    return FileVisitResult.SKIP_SUBTREE;
                }
                names.add(name);
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
                names.add(file.getFileName().toString());
                return FileVisitResult.CONTINUE;
            }
        });
        return names;
    }

    /** The program's commands, as the command line's library sees them. */
    static CommandLine commands() {
        return Main.commands(new Workbench(
                Clock.systemUTC(),
                Map.of(),
                new PrintWriter(new StringWriter()),
                new PrintWriter(new StringWriter()),
                false,
                Pause.REAL));
    }
}
