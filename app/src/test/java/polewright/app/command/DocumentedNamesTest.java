package polewright.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
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
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import polewright.app.Pause;
import polewright.app.Workbench;
import polewright.app.json.PublishedSchemas;
import polewright.axis.rig.MountKind;

/** Every name that the documents set in backticks exists: types, packages, files, commands, options and keys. */
class DocumentedNamesTest {
    private static final Path ROOT = Path.of("..").toAbsolutePath().normalize();
    private static final Path DOCS = ROOT.resolve("docs");
    /** It names the files and columns of other people's packages. */
    private static final Path OF_OTHERS = DOCS.resolve("data.md");

    private static final List<String> MODULES = modules();

    /** Of other programs, of standards and of Java, or words to be typed that no key or command is. */
    private static final Set<String> NOT_OURS = Set.of(
            "2px",
            ".fits.gz",
            "application_id",
            "chromium",
            "curl",
            "data/wmm-2025.json",
            "date",
            "double",
            "equinox",
            "false",
            "ha",
            "keytool",
            "local",
            "ra",
            "required",
            "true",
            "tzdata",
            "user_version");

    private static final Pattern TYPE =
            Pattern.compile("([A-Z][A-Za-z0-9]*[a-z][A-Za-z0-9]*)(?:\\.(\\w+)(?:\\(\\))?)?");
    private static final Pattern QUALIFIED = Pattern.compile(
            "(?:polewright\\.)?((?:" + String.join("|", MODULES) + ")(?:\\.[a-z][a-z0-9]*)+)(?:\\.([A-Z]\\w+))?");
    private static final Pattern KEY = Pattern.compile("[.…]?[a-z0-9]+(?:[._][a-z0-9]+)*");
    /** Not one name but many, or a log of the person who reads. */
    private static final Pattern PLACEHOLDER = Pattern.compile(".*(?:[<>*…~$]|\\b[A-Z]{4,}\\b|\\.sqlite$).*");

    /** A name and where it stands. */
    private record Span(Path document, String text) {
        String at() {
            return ROOT.relativize(document) + ": `" + text + "`";
        }
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static List<Path> documents() throws IOException {
        List<Path> found = new ArrayList<>(List.of(
                ROOT.resolve("README.md"),
                ROOT.resolve("CONTRIBUTING.md"),
                ROOT.resolve("bench").resolve("README.md"),
                DOCS.resolve("schema").resolve("README.md")));
        try (Stream<Path> docs = Files.list(DOCS)) {
            docs.filter(file -> file.toString().endsWith(".md")).sorted().forEach(found::add);
        }
        return found;
    }

    private static List<Span> spans() throws IOException {
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

    private static List<String> modules() {
        List<String> built = new ArrayList<>();
        Matcher module = Pattern.compile("<module>(.*)</module>").matcher(read(ROOT.resolve("pom.xml")));
        while (module.find()) {
            built.add(module.group(1));
        }
        return List.copyOf(built);
    }

    /** Sources by the simple name of their type. */
    private static Map<String, String> sources() throws IOException {
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

    private static CommandLine commands() {
        return Polewright.commands(new Workbench(
                Clock.systemUTC(),
                Map.of(),
                new PrintWriter(new StringWriter()),
                new PrintWriter(new StringWriter()),
                false,
                Pause.REAL));
    }

    @Test
    void types() throws IOException {
        Map<String, String> sources = sources();
        String all = String.join("\n", sources.values());
        Set<String> names = namesOfFiles();
        List<String> unknown = new ArrayList<>();
        for (Span span : spans()) {
            Matcher type = TYPE.matcher(span.text());
            if (!type.matches()) {
                continue;
            }
            String source = sources.get(type.group(1));
            String member = type.group(2);
            // A type within another, or the unit at the end of a name.
            boolean isKnown = source != null
                    ? member == null || source.matches("(?s).*\\b" + member + "\\b.*")
                    : member == null
                            && Pattern.compile("(class|record|interface|enum) " + span.text() + "\\b|\\w" + span.text()
                                            + "\\b")
                                    .matcher(all)
                                    .find();
            if (!isKnown && !names.contains(span.text()) && !isOfJava(span.text())) {
                unknown.add(span.at());
            }
        }
        assertThat(unknown).isEmpty();
    }

    private static boolean isOfJava(String type) {
        try {
            Class.forName("java.lang." + type);
            return true;
        } catch (ClassNotFoundException e) {
            return false;
        }
    }

    /** Of all files and folders that are kept. */
    private static Set<String> namesOfFiles() throws IOException {
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

    @Test
    void packagesAndTheirTypes() throws IOException {
        List<String> unknown = new ArrayList<>();
        for (Span span : spans()) {
            Matcher name = QUALIFIED.matcher(span.text());
            if (name.matches() && !isPackage(name.group(1), name.group(2))) {
                unknown.add(span.at());
            }
        }
        assertThat(unknown).isEmpty();
    }

    private static boolean isPackage(String name, @Nullable String type) {
        Path folder = ROOT.resolve(name.split("\\.", -1)[0])
                .resolve("src/main/java/polewright")
                .resolve(name.replace('.', '/'));
        return type == null ? Files.isDirectory(folder) : Files.exists(folder.resolve(type + ".java"));
    }

    @Test
    void designListsEachModuleWithEachOfItsPackages() throws IOException {
        String design = read(DOCS.resolve("design.md"));
        for (String module : MODULES) {
            Matcher row =
                    Pattern.compile("(?m)^\\| `" + module + "` \\| ([^|]*) \\|").matcher(design);
            assertThat(row.find()).as(module).isTrue();
            Set<String> listed = new TreeSet<>();
            Matcher name = Pattern.compile("`([a-z.]+)`").matcher(row.group(1));
            while (name.find()) {
                listed.add(name.group(1).startsWith(".") ? module + name.group(1) : name.group(1));
            }
            assertThat(listed).isEqualTo(packages(module));
        }
    }

    private static Set<String> packages(String module) throws IOException {
        Path main = ROOT.resolve(module).resolve("src/main/java/polewright");
        // Some modules are tests and nothing else.
        Path top = Files.isDirectory(main) ? main : ROOT.resolve(module).resolve("src/test/java/polewright");
        try (Stream<Path> files = Files.walk(top)) {
            return new TreeSet<>(files.filter(file -> file.toString().endsWith(".java"))
                    .map(file -> top.relativize(file.getParent()).toString().replace('/', '.'))
                    .toList());
        }
    }

    @Test
    void readmeListsEachModule() {
        String readme = read(ROOT.resolve("README.md"));
        assertThat(MODULES).contains("sky", "app").allMatch(name -> readme.contains("| `" + name + "` |"));
    }

    @Test
    void files() throws IOException {
        List<String> unknown = new ArrayList<>();
        for (Span span : spans()) {
            String path = span.text();
            if (path.matches("\\S*/\\S*")
                    && !PLACEHOLDER.matcher(path).matches()
                    && !NOT_OURS.contains(path)
                    && !isFile(path)) {
                unknown.add(span.at());
            }
        }
        assertThat(unknown).isEmpty();
    }

    /** From the top of the repository, or from where sources, resources and tables begin. */
    private static boolean isFile(String path) {
        return Stream.of(
                        "",
                        "docs",
                        "app/src/main",
                        "app/src/main/resources/polewright",
                        "sky/src/test/resources",
                        "axis/src/test/resources")
                .anyMatch(from -> Files.exists(ROOT.resolve(from).resolve(path)));
    }

    /** Commands in backticks, in fenced blocks and in indented ones, with the options that follow them. */
    @Test
    void commandsWithTheirOptions() throws IOException {
        CommandLine all = commands();
        List<String> unknown = new ArrayList<>();
        for (Path document : documents()) {
            Matcher typed = Pattern.compile("(?m)(?:^ *|`)(?:\\./)?polewright ([^`\\n]+)")
                    .matcher(read(document));
            while (typed.find()) {
                check(all, document, typed.group(1), unknown);
            }
        }
        for (Span span : spans()) {
            if (all.getSubcommands().containsKey(span.text().split(" ", -1)[0])
                    && span.text().contains(" ")) {
                check(all, span.document(), span.text(), unknown);
            }
        }
        assertThat(unknown).isEmpty();
    }

    private static void check(CommandLine all, Path document, String typed, List<String> unknown) {
        CommandLine command = all;
        boolean isSub = true;
        // A practice runs any other command.
        for (String word : typed.replaceFirst("^practice do -- ", "")
                .replaceAll("\\s#.*", "")
                .strip()
                .split(" +", -1)) {
            CommandLine sub = command.getSubcommands().get(word);
            if (isSub && sub != null) {
                command = sub;
                continue;
            }
            boolean isOption = word.matches("--[a-z].*");
            boolean isWrong = isOption ? !takes(command, word) : isSub && command == all && word.matches("[a-z]+");
            if (isWrong) {
                unknown.add(ROOT.relativize(document) + ": " + typed + ": " + word);
            }
            isSub = false;
        }
    }

    private static boolean takes(CommandLine command, String option) {
        String name = option.replaceAll("[=,.;:)].*", "");
        // The launcher's own.
        return command.getCommandSpec().findOption(name) != null
                || (name.equals("--setup") && command.getParent() == null);
    }

    @Test
    void namesThatAreNotThere_areCaught() {
        List<String> unknown = new ArrayList<>();
        check(commands(), DOCS, "allow look saturn --strange 3", unknown);
        check(commands(), DOCS, "alow 3", unknown);
        check(commands(), DOCS, "allow 3 --json", unknown);
        assertThat(unknown).hasSize(2);
        assertThat(isFile("docs/none.md")).isFalse();
        assertThat(isFile("docs/web.md")).isTrue();
        assertThat(isPackage("sky.nowhere", null)).isFalse();
        assertThat(isPackage("sky.angle", "Angel")).isFalse();
        assertThat(isPackage("sky.angle", "Angle")).isTrue();
    }

    @Test
    void options() throws IOException {
        Set<String> known = new HashSet<>(Set.of("--setup", "--from", "--count", "--seed"));
        addOptions(commands(), known);
        List<String> unknown = new ArrayList<>();
        for (Span span : spans()) {
            Matcher option = Pattern.compile("(?<!\\S)--[a-z][a-z0-9-]*").matcher(span.text());
            while (option.find()) {
                if (!known.contains(option.group())) {
                    unknown.add(span.at());
                }
            }
        }
        assertThat(unknown).isEmpty();
    }

    private static void addOptions(CommandLine command, Set<String> known) {
        command.getCommandSpec().options().forEach(option -> known.addAll(List.of(option.names())));
        command.getSubcommands().values().forEach(sub -> addOptions(sub, known));
    }

    /** Words in lower case: keys and words of the JSON, commands, modules, benches. */
    @Test
    void keysAndWords() throws IOException {
        Set<String> known = new HashSet<>(NOT_OURS);
        known.addAll(MODULES);
        known.add("polewright");
        Stream.of(MountKind.values()).forEach(kind -> known.add(kind.name().toLowerCase(Locale.ROOT)));
        commands().getSubcommands().keySet().forEach(known::add);
        for (String schema : PublishedSchemas.names()) {
            known.add(schema);
            addWords(PublishedSchemas.text(schema), known);
        }
        Matcher fuzzed = Pattern.compile("@FuzzTest\\s+void (\\w+)\\(")
                .matcher(String.join("\n", sources().values()));
        while (fuzzed.find()) {
            known.add(fuzzed.group(1));
        }
        Set<String> files = namesOfFiles();
        Map<String, String> unknown = new TreeMap<>();
        for (Span span : spans()) {
            String name = span.text();
            if (span.document().equals(OF_OTHERS)
                    || !KEY.matcher(name).matches()
                    || QUALIFIED.matcher(name).matches()
                    || (span.document().endsWith("design.md") && name.startsWith("."))
                    || files.contains(name)
                    || NOT_OURS.contains(name)
                    || name.endsWith(".sqlite")) {
                continue;
            }
            for (String part : name.replace("…_", "").split("\\.", -1)) {
                if (!part.isEmpty() && !known.contains(part) && known.stream().noneMatch(k -> k.endsWith("_" + part))) {
                    unknown.put(span.at(), part);
                }
            }
        }
        assertThat(unknown).isEmpty();
    }

    private static void addWords(JsonNode schema, Set<String> known) {
        schema.path("properties").fieldNames().forEachRemaining(known::add);
        schema.path("enum").forEach(word -> known.add(word.asText()));
        known.add(schema.path("const").asText());
        schema.forEach(inner -> addWords(inner, known));
    }
}
