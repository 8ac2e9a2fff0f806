package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;
import polewright.launcher.Main;
import polewright.operations.Pause;
import polewright.operations.Workbench;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType;
import polewright.web.form.CommandForm;
import polewright.web.form.CommandForms;
import polewright.web.form.SightingForms;
import polewright.web.form.WorkForms;
import polewright.web.page.Page;
import polewright.web.page.Pages;

/** Everything the pages can do can be typed, and vice versa; exceptions are listed here with their reasons. */
class PagesAndCommandsTest {
    /** Commands that write but have no form. */
    private static final Map<String, String> NO_FORM = Map.of(
            "log rescue", "repairs a file on the laptop's disk; it writes a file there",
            "sight frames", "the server measures the frames that come into its folder, and logs them itself",
            "sight drift-frames", "the same",
            "log import", "a file: it is sent, not filled in",
            "log export", "a link on Nights hands the file out",
            "practice do", "the pages under /practice/night are any other command in the practice",
            "watch", "the server itself watches the folder",
            "serve", "it is the server",
            "demo", "it plays by itself into a log of its own");

    /** Read-only commands, and the page that shows the same. */
    private static final Map<String, String> TOLD_ON = Map.ofEntries(
            Map.entry("ground", "/ground"),
            Map.entry("fix", "/fix"),
            Map.entry("next", "/"),
            Map.entry("advise", "/"),
            Map.entry("log", "/nights"),
            Map.entry("log nights", "/nights"),
            Map.entry("log compare", "/nights/compare"),
            Map.entry("log seasons", "/nights/seasons"),
            Map.entry("pointing", "/pointing"),
            Map.entry("tonight", "/tonight"),
            Map.entry("stars", "/tonight"),
            Map.entry("devices", "/devices"),
            Map.entry("rig", "/rig"),
            Map.entry("site", "/rig"),
            Map.entry("practice", "/practice"),
            Map.entry("practice debrief", "/practice/debrief"));

    /** Read-only commands that no page shows. */
    private static final Map<String, String> NOT_TOLD = Map.of(
            "completion", "it is for the shell in a terminal",
            "replay", "it reads a file that is on the laptop",
            "where", "a question about any one body; the places that a night needs are on Tonight and Now",
            "chart", "a chart for one star; not on a page yet",
            "upright", "what an upright fork loses, for deciding about a wedge; not on a page yet",
            "attitude", "it reads a file that is on the laptop",
            "axis", "it reads files that are on the laptop");

    /** Options that no form has, for any command. */
    private static final Set<String> EVERYWHERE = Set.of(
            "--help",
            "--version",
            // The server reads the answer as JSON, and the form's key makes it safe to send again.
            "--json",
            "--once",
            "--key",
            // The page sends what it knew when it was rendered.
            "--if-night",
            "--if-last",
            // Asked when an entry looks like a slip, and answered by a separate button.
            "--ask",
            "--as-typed",
            // A server has one log, and a page has its own palette and pictures.
            "--log",
            "--red",
            "--picture",
            "--dark",
            "--draw");

    /** Options that a form could have but does not. */
    private static final Map<String, String> NO_FIELD = Map.ofEntries(
            Map.entry("begin --rig", "a file"),
            Map.entry("practice begin --rig", "a file"),
            Map.entry("rig correct --rig", "a file; a rig of an earlier night is one press"),
            Map.entry("rig correct --azimuth-clockwise", "the page shows which way it goes, and a tick reverses that"),
            Map.entry("rig correct --altitude-clockwise", "the page shows which way it goes, and a tick reverses that"),
            Map.entry("horizon --csv", "a file; its corners are typed"),
            Map.entry("centre --csv", "a file"),
            Map.entry("centre --frame", "a file, with all that helps to solve it"),
            Map.entry("centre --near", "for --frame"),
            Map.entry("centre --within", "for --frame"),
            Map.entry("centre --scale", "for --frame"),
            Map.entry("centre --focal-length", "for --frame"),
            Map.entry("centre --pixel-size", "for --frame"),
            Map.entry("centre --mosaic", "for --frame"),
            Map.entry("centre --zone", "for --frame"),
            Map.entry("centre --mirrored", "for --frame"));

    private static final List<CommandForm> FORMS = Stream.of(
                    CommandForms.all(), CommandForms.practice(), CommandForms.laptop())
            .flatMap(List::stream)
            .toList();

    @TempDir
    private Path folder;

    private final Map<String, CommandLine> commands = new LinkedHashMap<>();

    @BeforeEach
    void readTheCommands() {
        Workbench bench = new Workbench(
                Clock.systemUTC(),
                Map.of("XDG_DATA_HOME", folder.toString()),
                new PrintWriter(new StringWriter()),
                new PrintWriter(new StringWriter()),
                false,
                Pause.REAL);
        collect("", Main.commands(bench));
    }

    private void collect(String path, CommandLine line) {
        line.getSubcommands().forEach((name, command) -> {
            String words = path.isEmpty() ? name : path + " " + name;
            // A group that only holds other commands does nothing itself.
            if (command.getCommand() instanceof java.util.concurrent.Callable<?>) {
                commands.put(words, command);
            }
            collect(words, command);
        });
    }

    private CommandLine command(String words) {
        return java.util.Objects.requireNonNull(commands.get(words), words);
    }

    private static String words(CommandForm form) {
        return form.command().stream().takeWhile(word -> !isOption(word)).collect(Collectors.joining(" "));
    }

    /** One that the form itself sets, such as {@code --open}. */
    private static boolean isOption(String word) {
        return word.startsWith("--");
    }

    @Test
    void everyCommand_hasAForm_aPage_orAReason() {
        Set<String> formed = FORMS.stream().map(PagesAndCommandsTest::words).collect(Collectors.toSet());
        assertThat(commands.keySet())
                .allSatisfy(command -> assertThat(List.of(
                                formed.contains(command),
                                NO_FORM.containsKey(command),
                                TOLD_ON.containsKey(command),
                                NOT_TOLD.containsKey(command)))
                        .as(command)
                        .containsOnlyOnce(true));
        assertThat(Stream.of(NO_FORM, TOLD_ON, NOT_TOLD).flatMap(list -> list.keySet().stream()))
                .isSubsetOf(commands.keySet());
    }

    @Test
    void repeatableForms_arePrefilledOrHaveAReason() {
        commands.forEach((words, command) -> {
            Map<String, OptionSpec> options = command.getCommandSpec().optionsMap();
            if (options.containsKey("--once") || options.containsKey("--key")) {
                assertThat(TOLD_ON.containsKey(words) || NOT_TOLD.containsKey(words))
                        .as("%s writes", words)
                        .isFalse();
            }
        });
    }

    @Test
    void namedPages_exist() {
        assertThat(Pages.all()).extracting(Page::path).containsAll(TOLD_ON.values());
    }

    @Test
    void everyOption_isAField_setByTheServer_orHasAReason() {
        Set<String> missing = new TreeSet<>();
        Set<String> used = new TreeSet<>();
        for (String words :
                FORMS.stream().map(PagesAndCommandsTest::words).distinct().toList()) {
            List<CommandForm> forms =
                    FORMS.stream().filter(form -> words(form).equals(words)).toList();
            Set<String> fields = new TreeSet<>(EVERYWHERE);
            for (CommandForm form : forms) {
                form.fields().forEach(field -> fields.add("--" + field.name()));
                form.command().stream().filter(PagesAndCommandsTest::isOption).forEach(fields::add);
                if (form.takesTime()) {
                    fields.add("--at");
                }
            }
            for (OptionSpec option : command(words).getCommandSpec().options()) {
                String named = words + " " + option.longestName();
                if (NO_FIELD.containsKey(named)) {
                    used.add(named);
                } else if (!fields.contains(option.longestName())) {
                    missing.add(named);
                }
            }
        }
        assertThat(missing).isEmpty();
        assertThat(used).isEqualTo(new TreeSet<>(NO_FIELD.keySet()));
    }

    @Test
    void everyPositionalParameter_isAField() {
        for (String words :
                FORMS.stream().map(PagesAndCommandsTest::words).distinct().toList()) {
            long most = FORMS.stream()
                    .filter(form -> words(form).equals(words))
                    .mapToLong(form -> form.fields().stream()
                            .filter(Argument::isPositional)
                            .count())
                    .max()
                    .orElse(0);
            assertThat(most)
                    .as(words)
                    .isEqualTo(command(words)
                            .getCommandSpec()
                            .positionalParameters()
                            .size());
        }
    }

    @Test
    void everyField_isAnOptionOfItsCommand() {
        for (CommandForm form : FORMS) {
            assertThat(commands).as(form.id()).containsKey(words(form));
            Map<String, OptionSpec> options =
                    command(words(form)).getCommandSpec().optionsMap();
            List<String> named = form.fields().stream()
                    .filter(field -> !field.isPositional())
                    .map(field -> "--" + field.name())
                    .collect(Collectors.toCollection(ArrayList::new));
            if (form.takesTime()) {
                named.add("--at");
            }
            if (form.kind() != CommandForm.Kind.DEVICES) {
                named.add(form.kind() == CommandForm.Kind.PRACTICE ? "--key" : "--once");
            }
            assertThat(options.keySet()).as(form.id()).containsAll(named);
        }
    }

    @Test
    void commandShownWithAForm_hasEveryEntry() throws Exception {
        Map<String, String> awkward = Map.of(
                "star", "alp Lyr",
                "body", "M 31",
                "text", "it's $HOME; \"dew\" `x` & more",
                "azimuth", "1 1/4 ccw",
                "angle", "-3.5",
                "corners", "0,8 95,22.5");
        for (CommandForm form : FORMS) {
            Map<String, String> filled = new LinkedHashMap<>();
            for (Argument<?> field : form.fields()) {
                if (field.type() instanceof ArgumentType.Tick) {
                    filled.put(field.name(), ArgumentType.Tick.YES);
                } else if (field.type() instanceof ArgumentType.Choice<?> choice) {
                    filled.put(
                            field.name(),
                            choice.options().get(choice.options().size() - 1).value());
                } else {
                    filled.put(field.name(), awkward.getOrDefault(field.name(), "2"));
                }
            }
            List<String> entered = new ArrayList<>(form.command());
            form.fields().forEach(field -> entered.addAll(asTyped(field, filled.getOrDefault(field.name(), ""))));
            List<String> typed = new ArrayList<>(splitByShell(form.line(filled)));
            typed.remove("--");
            assertThat(typed).as(form.id()).containsExactlyInAnyOrderElementsOf(entered);
        }
    }

    private static List<String> asTyped(Argument<?> field, String value) {
        if (field.type().isTick()) {
            return List.of("--" + field.name());
        }
        List<String> values = field.type().asWords(value);
        if (field.isPositional()) {
            return values;
        }
        return values.size() == 1
                ? List.of("--" + field.name() + "=" + value)
                : Stream.concat(Stream.of("--" + field.name()), values.stream()).toList();
    }

    private static CommandForm sighting(String id) {
        return SightingForms.typed().stream()
                .filter(form -> form.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void missingValues_areShownAsDots() {
        assertThat(sighting("compass").line(Map.of())).isEqualTo("polewright sight compass …");
        assertThat(sighting("drift").line(Map.of("star", "vega", "minutes", "5")))
                .isEqualTo("polewright sight drift --minutes=5 --moved=… --toward=… vega");
        assertThat(sighting("shadow").line(Map.of("angle", "-3", "body", "")))
                .isEqualTo("polewright sight shadow -- -3");
        assertThat(WorkForms.ALLOW_FOR.line(Map.of("for", "long guided subs")))
                .isEqualTo("polewright allow --for='long guided subs'");
    }

    /** The words after the first, split as a shell splits a line. */
    private static List<String> splitByShell(String line) throws Exception {
        Process shell = new ProcessBuilder("/bin/sh", "-c", "polewright() { printf '%s\\0' \"$@\"; }; " + line).start();
        String out = new String(shell.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        assertThat(shell.waitFor()).as(line).isZero();
        return List.of(out.split("\0"));
    }
}
