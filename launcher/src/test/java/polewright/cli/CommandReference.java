package polewright.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.Model.UsageMessageSpec;

/** The page of all commands as Markdown, from the same model as the help. */
final class CommandReference {
    /** The commands under the root in the order of the page, under their headings. */
    private static final Map<String, List<String>> CHAPTERS = chapters();

    /** An option of this many commands is described once for all of them. */
    private static final int MANY = 8;

    private static final Pattern EXIT_STATUS = Pattern.compile("  (\\d)  (.*)");
    private static final Pattern OPTION = Pattern.compile("(?<![\\w`-])--[a-z][a-z-]*");

    private final CommandLine root;
    private final Map<String, Integer> uses = new TreeMap<>();
    private final Map<String, OptionSpec> shared = new LinkedHashMap<>();

    private CommandReference(CommandLine root) {
        this.root = root;
        count(root);
        share(root);
    }

    private static Map<String, List<String>> chapters() {
        Map<String, List<String>> chapters = new LinkedHashMap<>();
        chapters.put("Before dark", List.of("ground", "upright"));
        chapters.put("Site, rig and work", List.of("begin", "allow", "horizon", "rig", "site"));
        chapters.put("Sightings", List.of("sight", "skip"));
        chapters.put("What to do next", List.of("next", "advise", "fix"));
        chapters.put("Screws and clamps", List.of("turn", "clamp", "unclamp", "knock"));
        chapters.put("Camera frames", List.of("watch", "attitude", "axis"));
        chapters.put("Centring and pointing", List.of("centre", "pointing"));
        chapters.put("What to observe", List.of("tonight", "target", "stars", "chart", "where"));
        chapters.put("The log", List.of("note", "undo", "retime", "log", "replay"));
        chapters.put("Practice and demo", List.of("practice", "demo"));
        chapters.put("The program itself", List.of("serve", "devices", "completion"));
        return chapters;
    }

    /** The whole page. */
    static String page(CommandLine root) {
        return new CommandReference(root).page();
    }

    /** The commands that have a place on the page. */
    static List<String> placed() {
        return CHAPTERS.values().stream().flatMap(List::stream).toList();
    }

    private String page() {
        StringBuilder page = new StringBuilder("""
                # All commands

                Every command with its arguments, options and examples. `CommandReferenceTest` writes this page from the
                command line itself. A night from beginning to end is in [commands.md](commands.md).

                Replace words in capitals with your own values. Square brackets mark what may be left out; `...` means one or more. Every command also has `--help`.

                """);
        CHAPTERS.forEach((title, names) -> page.append("- [")
                .append(title)
                .append("](#")
                .append(anchor(title))
                .append("): ")
                .append(names.stream()
                        .map(name -> "[`" + name + "`](#" + name + ")")
                        .collect(Collectors.joining(", ")))
                .append('\n'));
        page.append("- [Options of many commands](#options-of-many-commands)\n- [Exit status](#exit-status)\n");
        CHAPTERS.forEach((title, names) -> {
            page.append("\n## ").append(title).append('\n');
            names.forEach(name -> addCommand(
                    page, name, Objects.requireNonNull(root.getSubcommands().get(name), name)));
        });
        page.append("\n## Options of many commands\n\nThe commands that have them name them in their last line.\n\n");
        addTable(page, shared.values().stream().map(CommandReference::row).toList());
        page.append(
                "\n## Exit status\n\nThe same for all commands. A failure never loses or changes what is already logged.\n\n");
        page.append("| status | meaning |\n|---|---|\n");
        exitStatus()
                .forEach((status, meaning) -> page.append("| ")
                        .append(status)
                        .append(" | ")
                        .append(text(meaning))
                        .append(" |\n"));
        return page.toString();
    }

    private static String anchor(String title) {
        return title.toLowerCase(Locale.ROOT).replace(",", "").replace(' ', '-');
    }

    private void count(CommandLine command) {
        command.getCommandSpec().options().forEach(option -> uses.merge(row(option), 1, Integer::sum));
        command.getSubcommands().values().forEach(this::count);
    }

    private void share(CommandLine command) {
        for (OptionSpec option : shown(command.getCommandSpec())) {
            if (uses.getOrDefault(row(option), 0) >= MANY) {
                shared.putIfAbsent(row(option), option);
            }
        }
        command.getSubcommands().values().forEach(this::share);
    }

    /** The options of a command, without hidden ones and without {@code --help}. */
    static List<OptionSpec> shown(CommandSpec command) {
        return command.options().stream()
                .filter(option -> !option.hidden() && !option.usageHelp())
                .toList();
    }

    private void addCommand(StringBuilder page, String words, CommandLine command) {
        CommandSpec spec = command.getCommandSpec();
        UsageMessageSpec usage = spec.usageMessage();
        page.append("\n### ").append(words).append("\n\n").append(text(String.join(" ", usage.description())));
        page.append("\n\n```\n").append(synopsis(words, command)).append("\n```\n");
        List<String> rows = new ArrayList<>();
        spec.positionalParameters().forEach(parameter -> rows.add(row(parameter)));
        List<String> also = new ArrayList<>();
        for (OptionSpec option : shown(spec)) {
            if (shared.containsKey(row(option))) {
                also.add("`" + option.longestName() + "`");
            } else {
                rows.add(row(option));
            }
        }
        if (!rows.isEmpty()) {
            page.append('\n');
            addTable(page, rows);
        }
        addFooter(page, usage.footer());
        if (!also.isEmpty()) {
            page.append("\nAlso: ").append(String.join(", ", also)).append(".\n");
        }
        command.getSubcommands().forEach((name, sub) -> addCommand(page, words + " " + name, sub));
    }

    private static void addTable(StringBuilder page, List<String> rows) {
        page.append("| argument | meaning |\n|---|---|\n");
        rows.forEach(row -> page.append(row).append('\n'));
    }

    /** Examples are indented in the help: here they are blocks. */
    private static void addFooter(StringBuilder page, String... lines) {
        boolean isBlock = false;
        boolean isParagraph = false;
        for (String formatted : lines) {
            String line = formatted.replace("%%", "%").stripTrailing();
            boolean isExample = line.startsWith("  ");
            if (isBlock != isExample) {
                page.append(isExample ? "\n```\n" : "```\n");
                isBlock = isExample;
                isParagraph = false;
            }
            if (isExample) {
                page.append(line.substring(2)).append('\n');
            } else if (!line.isEmpty()) {
                page.append(isParagraph ? "" : "\n").append(text(line)).append('\n');
                isParagraph = true;
            }
        }
        page.append(isBlock ? "```\n" : "");
    }

    private static String synopsis(String words, CommandLine command) {
        CommandSpec spec = command.getCommandSpec();
        List<String> parts = new ArrayList<>(List.of("polewright", words));
        shown(spec).stream().filter(ArgSpec::required).forEach(option -> parts.add(typed(option)));
        if (shown(spec).stream().anyMatch(option -> !option.required())) {
            parts.add("[options]");
        }
        for (PositionalParamSpec parameter : spec.positionalParameters()) {
            String name = typed(parameter);
            parts.add(parameter.arity().min() == 0 ? "[" + name + "]" : name);
        }
        if (!command.getSubcommands().isEmpty()) {
            String names = String.join("|", command.getSubcommands().keySet());
            parts.add(isGroup(command) ? names : "[" + names + "]");
        }
        return String.join(" ", parts);
    }

    /** Whether it does nothing without one of its commands. */
    private static boolean isGroup(CommandLine command) {
        return !(command.getCommand() instanceof Callable<?>);
    }

    private static String typed(ArgSpec argument) {
        if (argument instanceof OptionSpec option) {
            boolean takesValue = option.arity().max() > 0;
            boolean isOptional = option.arity().min() == 0;
            String value = isOptional ? "[" + option.paramLabel() + "]" : option.paramLabel();
            return option.longestName() + (takesValue ? " " + value : "");
        }
        return argument.paramLabel() + (argument.arity().max() > 1 ? "..." : "");
    }

    private static String row(ArgSpec argument) {
        String names = argument instanceof OptionSpec option
                ? Stream.of(option.names())
                        .filter(name -> !name.equals(option.longestName()))
                        .map(name -> "`" + name + "`, ")
                        .collect(Collectors.joining())
                : "";
        String need = argument.required() ? "**Required.** " : "";
        // A table ends a cell at a bar, even in backticks.
        String typed = typed(argument).replace("|", "\\|");
        return "| " + names + "`" + typed + "` | " + need + text(String.join(" ", argument.description())) + " |";
    }

    private Map<Integer, String> exitStatus() {
        Map<Integer, String> meanings = new TreeMap<>();
        for (String line : root.getCommandSpec().usageMessage().footer()) {
            Matcher status = EXIT_STATUS.matcher(line);
            if (status.matches()) {
                meanings.put(Integer.valueOf(status.group(1)), status.group(2));
            }
        }
        return meanings;
    }

    /** Text of the help as Markdown: options in backticks, Markdown's own characters escaped. */
    private static String text(String help) {
        String escaped = help.replaceAll("([|*<\\[\\]])", "\\\\$1");
        return OPTION.matcher(escaped).replaceAll(option -> "`" + option.group() + "`");
    }
}
