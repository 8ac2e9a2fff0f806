package polewright.operations.action;

import java.util.ArrayList;
import java.util.List;

/**
 * Something a person can do: a command of the terminal, a form of the pages.
 *
 * @param id its address, in lower-case letters and hyphens
 * @param command the words that the command begins with: {@code sight}, {@code compass}
 * @param title what is done, the verb first
 * @param intro what to do before filling it in, in whole sentences; may be empty
 * @param arguments in the order in which they are asked for
 * @param examples command lines as they could be typed, with an explanation where one helps
 * @param button the label of the button that sends it
 * @param timing what a given time means
 * @param asksIfMistaken whether it asks for confirmation of an entry that looks like a mistake
 * @param checking finds what is worth saying about a valid entry
 * @param effect what carrying it out does
 */
public record Action(
        String id,
        List<String> command,
        String title,
        String intro,
        List<Argument<?>> arguments,
        List<Example> examples,
        String button,
        Timing timing,
        boolean asksIfMistaken,
        Checking checking,
        Effect effect) {
    private static final Checking NOTHING_TO_CHECK = (entries, context) -> List.of();

    public Action {
        command = List.copyOf(command);
        arguments = List.copyOf(arguments);
        examples = List.copyOf(examples);
    }

    /** What a given time means. */
    public enum Timing {
        /** It is always logged as done now. */
        NOW,
        /** The time of the measurement itself; for a drift, when it began. */
        MEASURED,
        /** When it was done. */
        DONE
    }

    /**
     * An example.
     *
     * @param meaning what it means, without a colon; may be empty
     * @param typed what is typed after the words of the command
     */
    public record Example(String meaning, String typed) {}

    /** Finds what is worth saying about a valid entry. */
    @FunctionalInterface
    public interface Checking {
        List<EntryNotice> notices(Entries entries, ActionContext context);
    }

    /** An action that adds to the night's log, as done now. */
    public static Action of(String id, List<String> command, String title, String intro, Effect.Entering entering) {
        return having(id, command, title, intro, entering);
    }

    /** An action with this effect. */
    public static Action having(String id, List<String> command, String title, String intro, Effect effect) {
        return new Action(
                id, command, title, intro, List.of(), List.of(), "Log it", Timing.NOW, false, NOTHING_TO_CHECK, effect);
    }

    /** The same action with these arguments added at the end. */
    public Action taking(Argument<?>... more) {
        return taking(List.of(more));
    }

    /** The same for a list of them. */
    public Action taking(List<? extends Argument<?>> more) {
        List<Argument<?>> all = new ArrayList<>(arguments);
        all.addAll(more);
        return new Action(id, command, title, intro, all, examples, button, timing, asksIfMistaken, checking, effect);
    }

    /** The same action with an optional time. */
    public Action at(Timing when) {
        return new Action(
                id, command, title, intro, arguments, examples, button, when, asksIfMistaken, checking, effect);
    }

    /** The same action with this introduction. */
    public Action about(String words) {
        return new Action(
                id, command, title, words, arguments, examples, button, timing, asksIfMistaken, checking, effect);
    }

    /** The same action with this label on its button. */
    public Action sentBy(String label) {
        return new Action(
                id, command, title, intro, arguments, examples, label, timing, asksIfMistaken, checking, effect);
    }

    /** The same action, asking for confirmation of an entry that looks like a mistake. */
    public Action askingIfMistaken() {
        return new Action(id, command, title, intro, arguments, examples, button, timing, true, checking, effect);
    }

    /** The same action with one more example. */
    public Action forExample(String meaning, String typed) {
        List<Example> all = new ArrayList<>(examples);
        all.add(new Example(meaning, typed));
        return new Action(id, command, title, intro, arguments, all, button, timing, asksIfMistaken, checking, effect);
    }

    /** The same action with this check. */
    public Action checkedBy(Checking check) {
        return new Action(
                id, command, title, intro, arguments, examples, button, timing, asksIfMistaken, check, effect);
    }
}
