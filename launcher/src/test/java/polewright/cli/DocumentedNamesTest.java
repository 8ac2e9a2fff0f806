package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
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
import polewright.mount.rig.MountKind;
import polewright.report.json.PublishedSchemas;

/** Every name that the documents set in backticks exists: types, packages, files, commands, options and keys. */
class DocumentedNamesTest {
    /** Lists the files and columns of third-party packages. */
    private static final Path OF_OTHERS = DocumentedNames.DOCS.resolve("data.md");

    /** Names from other programs, standards and Java, and typed words that are neither keys nor commands. */
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
            "switch",
            "true",
            "tzdata",
            "user_version");

    private static final Pattern TYPE =
            Pattern.compile("([A-Z][A-Za-z0-9]*[a-z][A-Za-z0-9]*)(?:\\.(\\w+)(?:\\(\\))?)?");
    private static final Pattern QUALIFIED = Pattern.compile("(?:polewright\\.)?((?:"
            + String.join("|", DocumentedNames.MODULES) + ")(?:\\.[a-z][a-z0-9]*)+)(?:\\.([A-Z]\\w+))?");
    private static final Pattern KEY = Pattern.compile("[.…]?[a-z0-9]+(?:[._][a-z0-9]+)*");
    /** Patterns that stand for many names, and the reader's own log. */
    private static final Pattern PLACEHOLDER = Pattern.compile(".*(?:[<>*…~$]|\\b[A-Z]{4,}\\b|\\.sqlite$).*");

    @Test
    void types() throws IOException {
        Map<String, String> sources = DocumentedNames.sources();
        String all = String.join("\n", sources.values());
        Set<String> names = DocumentedNames.namesOfFiles();
        List<String> unknown = new ArrayList<>();
        for (DocumentedNames.Span span : DocumentedNames.spans()) {
            Matcher type = TYPE.matcher(span.text());
            if (!type.matches()) {
                continue;
            }
            String source = sources.get(type.group(1));
            String member = type.group(2);
            // A nested type, or a unit suffix of a name.
            boolean isKnown = source != null
                    ? member == null || source.matches("(?s).*\\b" + member + "\\b.*")
                    : member == null
                            && Pattern.compile("(class|record|interface|enum) " + span.text() + "\\b|\\w" + span.text()
                                            + "\\b")
                                    .matcher(all)
                                    .find();
            if (!isKnown && !names.contains(span.text()) && !isJavaType(span.text())) {
                unknown.add(span.at());
            }
        }
        assertThat(unknown).isEmpty();
    }

    private static boolean isJavaType(String type) {
        try {
            Class.forName("java.lang." + type);
            return true;
        } catch (ClassNotFoundException e) {
            return false;
        }
    }

    @Test
    void packagesAndTheirTypes() throws IOException {
        List<String> unknown = new ArrayList<>();
        for (DocumentedNames.Span span : DocumentedNames.spans()) {
            Matcher name = QUALIFIED.matcher(span.text());
            if (name.matches() && !isPackage(name.group(1), name.group(2))) {
                unknown.add(span.at());
            }
        }
        assertThat(unknown).isEmpty();
    }

    private static boolean isPackage(String name, @Nullable String type) {
        Path folder = DocumentedNames.ROOT
                .resolve(name.split("\\.", -1)[0])
                .resolve("src/main/java/polewright")
                .resolve(name.replace('.', '/'));
        return type == null ? Files.isDirectory(folder) : Files.exists(folder.resolve(type + ".java"));
    }

    @Test
    void design_listsEveryModuleAndPackage() throws IOException {
        String design = DocumentedNames.read(DocumentedNames.DOCS.resolve("design.md"));
        for (String module : DocumentedNames.MODULES) {
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
        Path main = DocumentedNames.ROOT.resolve(module).resolve("src/main/java/polewright");
        // Some modules contain only tests.
        Path top = Files.isDirectory(main)
                ? main
                : DocumentedNames.ROOT.resolve(module).resolve("src/test/java/polewright");
        try (Stream<Path> files = Files.walk(top)) {
            return new TreeSet<>(files.filter(file -> file.toString().endsWith(".java"))
                    .map(file -> top.relativize(file.getParent()).toString().replace('/', '.'))
                    .toList());
        }
    }

    @Test
    void contents_listEveryPage() throws IOException {
        String contents = DocumentedNames.read(DocumentedNames.DOCS.resolve("README.md"));
        try (Stream<Path> pages = Files.list(DocumentedNames.DOCS)) {
            assertThat(pages.map(page -> page.getFileName().toString())
                            .filter(name -> name.endsWith(".md") && !name.equals("README.md")))
                    .contains("design.md", "guide.md")
                    .allMatch(name -> contents.contains("](" + name + ")"));
        }
    }

    @Test
    void readme_isShort_andLinksToTheContents() {
        String readme = DocumentedNames.read(DocumentedNames.ROOT.resolve("README.md"));
        assertThat(readme.lines()).hasSizeLessThanOrEqualTo(120);
        assertThat(readme).contains("./polewright demo", "./check", "](docs/README.md)");
    }

    @Test
    void files() throws IOException {
        List<String> unknown = new ArrayList<>();
        for (DocumentedNames.Span span : DocumentedNames.spans()) {
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

    /** Relative to the root of the repository, or to a source, resource or table folder. */
    private static boolean isFile(String path) {
        return Stream.of(
                        "",
                        "docs",
                        "web/src/main",
                        "web/src/main/resources/polewright",
                        "sky/src/test/resources",
                        "mount/src/test/resources")
                .anyMatch(
                        from -> Files.exists(DocumentedNames.ROOT.resolve(from).resolve(path)));
    }

    /** Commands in backticks, fenced blocks and indented blocks, with the options that follow them. */
    @Test
    void commandsWithTheirOptions() throws IOException {
        CommandLine all = DocumentedNames.commands();
        List<String> unknown = new ArrayList<>();
        for (Path document : DocumentedNames.documents()) {
            Matcher typed = Pattern.compile("(?m)(?:^ *|`)(?:\\./)?polewright ([^`\\n]+)")
                    .matcher(DocumentedNames.read(document));
            while (typed.find()) {
                check(all, document, typed.group(1), unknown);
            }
        }
        for (DocumentedNames.Span span : DocumentedNames.spans()) {
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
        // A practice command runs any other command.
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
            boolean isWrong = isOption ? !accepts(command, word) : isSub && command == all && word.matches("[a-z]+");
            if (isWrong) {
                unknown.add(DocumentedNames.ROOT.relativize(document) + ": " + typed + ": " + word);
            }
            isSub = false;
        }
    }

    private static boolean accepts(CommandLine command, String option) {
        String name = option.replaceAll("[=,.;:)].*", "");
        // Handled by the launcher.
        return command.getCommandSpec().findOption(name) != null
                || (name.equals("--setup") && command.getParent() == null);
    }

    @Test
    void unknownNames_areCaught() {
        List<String> unknown = new ArrayList<>();
        check(DocumentedNames.commands(), DocumentedNames.DOCS, "allow look saturn --strange 3", unknown);
        check(DocumentedNames.commands(), DocumentedNames.DOCS, "alow 3", unknown);
        check(DocumentedNames.commands(), DocumentedNames.DOCS, "allow 3 --json", unknown);
        assertThat(unknown).hasSize(2);
        assertThat(isFile("docs/none.md")).isFalse();
        assertThat(isFile("docs/web.md")).isTrue();
        assertThat(isPackage("sky.nowhere", null)).isFalse();
        assertThat(isPackage("sky.angle", "Angel")).isFalse();
        assertThat(isPackage("sky.angle", "Angle")).isTrue();
    }

    @Test
    void options() throws IOException {
        Set<String> known = new HashSet<>(Set.of("--setup", "--from", "--count", "--seed", "--tell", "--correcting"));
        addOptions(DocumentedNames.commands(), known);
        List<String> unknown = new ArrayList<>();
        for (DocumentedNames.Span span : DocumentedNames.spans()) {
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

    /** Lower-case words: JSON keys and words, commands, modules and benchmarks. */
    @Test
    void keysAndWords() throws IOException {
        Set<String> known = new HashSet<>(NOT_OURS);
        known.addAll(DocumentedNames.MODULES);
        known.add("polewright");
        Stream.of(MountKind.values()).forEach(kind -> known.add(kind.name().toLowerCase(Locale.ROOT)));
        DocumentedNames.commands().getSubcommands().keySet().forEach(known::add);
        for (String schema : PublishedSchemas.names()) {
            known.add(schema);
            addWords(PublishedSchemas.text(schema), known);
        }
        Matcher fuzzed = Pattern.compile("@FuzzTest\\s+void (\\w+)\\(")
                .matcher(String.join("\n", DocumentedNames.sources().values()));
        while (fuzzed.find()) {
            known.add(fuzzed.group(1));
        }
        Set<String> files = DocumentedNames.namesOfFiles();
        Map<String, String> unknown = new TreeMap<>();
        for (DocumentedNames.Span span : DocumentedNames.spans()) {
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
