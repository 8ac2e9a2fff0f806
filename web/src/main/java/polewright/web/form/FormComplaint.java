package polewright.web.form;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import polewright.operations.action.Argument;

/**
 * Rewords a command's complaint for a page: the label of a field instead of an option, and the title of a form
 * instead of another command. A remedy for which the page has no form is left out.
 */
public final class FormComplaint {
    /** {@code polewright sight drift --minutes: 'x' is not a number …}. */
    private static final Pattern COMMAND_FIRST = Pattern.compile("polewright ([^:']*): (.*)", Pattern.DOTALL);
    /** {@code polewright begin --site LAT,LON}, up to the end of the clause. */
    private static final Pattern COMMAND = Pattern.compile("polewright ((?:[a-z]+ ?)+)((?:--|[^,;.?])*(?:,[A-Z]+)*)");
    /** {@code --site LAT,LON[,HEIGHT]}, with the word in front of it. */
    private static final Pattern OPTION =
            Pattern.compile("(?:\\b([Aa]dd|[Gg]ive) )?--([a-z][a-z0-9-]*)(?:[ =][A-Z][A-Z0-9,\\[\\]]*\\b\\]?)?");

    private static final Pattern FIRST_SENTENCE = Pattern.compile("(.*?)(?:\\.(?= [A-Z'])|: ).*", Pattern.DOTALL);

    private static final Pattern TYPED = Pattern.compile("--[a-z]|polewright [a-z]");

    private FormComplaint() {}

    /** Rewords one line of a command's complaint, for the page with the form that ran the command. */
    public static String of(CommandForm form, String line) {
        Matcher first = COMMAND_FIRST.matcher(line);
        if (!first.matches()) {
            return capitalised(worded(form, line));
        }
        String text = worded(form, first.group(2));
        return fieldAt(form, first.group(1))
                .map(field -> "'" + label(field) + "': " + text)
                .orElseGet(() -> capitalised(text));
    }

    /** The same for a page that has no form for that command. */
    public static String withoutForm(String line) {
        Matcher first = COMMAND_FIRST.matcher(line);
        String text = commandsAsTitles(first.matches() ? first.group(2) : line);
        return TYPED.matcher(text).find() ? withoutRemedy(text) : text;
    }

    private static String worded(CommandForm form, String text) {
        String labelled = replaced(OPTION, commandsAsTitles(text), found -> option(form, found));
        return TYPED.matcher(labelled).find() ? withoutRemedy(labelled) : labelled;
    }

    /** Only what is wrong, if the remedy cannot be applied on a page. */
    private static String withoutRemedy(String text) {
        String what = FIRST_SENTENCE.matcher(text).replaceFirst("$1.");
        return what.replaceAll("--([a-z])", "$1");
    }

    private static String commandsAsTitles(String text) {
        return replaced(
                COMMAND,
                text,
                found -> formOf(found.group(1).strip().split(" "), found.group(2))
                        .map(form -> "'" + form.title() + "'")
                        .orElse(found.group()));
    }

    private static String replaced(Pattern pattern, String text, Function<MatchResult, String> with) {
        return pattern.matcher(text).replaceAll(found -> Matcher.quoteReplacement(with.apply(found)));
    }

    /** The form for this command, with the option or word that follows it. */
    private static Optional<CommandForm> formOf(String[] words, String rest) {
        Matcher option = OPTION.matcher(rest);
        boolean hasOption = option.find();
        return everyForm()
                .filter(form -> startsWith(List.of(words), form.command()))
                .filter(form -> !hasOption || fieldOf(form, option.group(2)).isPresent())
                .max(Comparator.comparingInt(
                                (CommandForm form) -> form.command().size())
                        .thenComparing(form -> form.fields().stream().anyMatch(Argument::isPositional)
                                == (!hasOption && !rest.isBlank())));
    }

    private static boolean startsWith(List<String> words, List<String> command) {
        return words.size() >= command.size()
                && words.subList(0, command.size()).equals(command);
    }

    private static Stream<CommandForm> everyForm() {
        return Stream.of(CommandForms.all(), CommandForms.practice(), CommandForms.laptop())
                .flatMap(List::stream);
    }

    private static String option(CommandForm form, MatchResult found) {
        Optional<Argument<?>> field = fieldOf(form, found.group(2))
                .or(() -> everyForm()
                        .filter(other ->
                                other.command().get(0).equals(form.command().get(0)))
                        .flatMap(other -> fieldOf(other, found.group(2)).stream())
                        .findFirst());
        return field.map(known -> verb(found.group(1), known) + "'" + label(known) + "'")
                .orElse(found.group());
    }

    private static String verb(String verb, Argument<?> field) {
        if (verb == null) {
            return "";
        }
        String words = field.type().isTick() ? "tick " : "fill in ";
        return Character.isUpperCase(verb.charAt(0)) ? capitalised(words) : words;
    }

    private static Optional<Argument<?>> fieldOf(CommandForm form, String option) {
        return form.fields().stream()
                .filter(field -> !field.isPositional() && field.name().equals(option))
                .findFirst();
    }

    /**
     * The field named at the end of a complaint's head: {@code sight drift --minutes}, {@code sight compass BEARING}.
     */
    private static Optional<Argument<?>> fieldAt(CommandForm form, String head) {
        String last = head.substring(head.lastIndexOf(' ') + 1);
        if (last.startsWith("--")) {
            return fieldOf(form, last.substring(2));
        }
        List<Argument<?>> positionals =
                form.fields().stream().filter(Argument::isPositional).toList();
        boolean isPositional = last.equals(last.toUpperCase(java.util.Locale.ROOT));
        return positionals.stream()
                .filter(field -> isPositional)
                .filter(field -> positionals.size() == 1 || field.name().equalsIgnoreCase(last))
                .findFirst();
    }

    /**
     * The short name of a field: {@code Site} of {@code Site: latitude, longitude, height}, without the "or" of an
     * alternative.
     */
    static String label(Argument<?> field) {
        String label = field.label().replaceFirst(":.*", "").replaceFirst("^Or (?:the |a )?", "");
        return capitalised(label);
    }

    private static String capitalised(String text) {
        return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
