package polewright.operations.action;

import java.util.ArrayList;
import java.util.List;
import polewright.session.event.NightEvent;

/**
 * Something a person can do that adds to the night's log: a command of the terminal, a form of the pages.
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
 * @param entering turns what was entered into events
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
        Entering entering) {
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

    /** Turns what was entered into events. */
    @FunctionalInterface
    public interface Entering {
        /**
         * The events, all logged or none.
         *
         * @throws polewright.sky.InputRefused if something was entered that cannot be used; other arguments are named
         *     in braces, {@code {per}}, other actions as {@code {do:clamp}}
         * @throws LooksMistaken if it looks like a mistake and is not confirmed
         */
        List<NightEvent> events(Entries entries, ActionContext context);
    }

    /**
     * An example.
     *
     * @param meaning what it means, without a colon; may be empty
     * @param typed what is typed after the words of the command
     */
    public record Example(String meaning, String typed) {}

    /** An action that is logged as done now. */
    public static Action of(String id, List<String> command, String title, String intro, Entering entering) {
        return new Action(id, command, title, intro, List.of(), List.of(), "Log it", Timing.NOW, false, entering);
    }

    /** The same action with these arguments added at the end. */
    public Action taking(Argument<?>... more) {
        List<Argument<?>> all = new ArrayList<>(arguments);
        all.addAll(List.of(more));
        return new Action(id, command, title, intro, all, examples, button, timing, asksIfMistaken, entering);
    }

    /** The same action with an optional time. */
    public Action at(Timing when) {
        return new Action(id, command, title, intro, arguments, examples, button, when, asksIfMistaken, entering);
    }

    /** The same action with this label on its button. */
    public Action sentBy(String label) {
        return new Action(id, command, title, intro, arguments, examples, label, timing, asksIfMistaken, entering);
    }

    /** The same action, asking for confirmation of an entry that looks like a mistake. */
    public Action askingIfMistaken() {
        return new Action(id, command, title, intro, arguments, examples, button, timing, true, entering);
    }

    /** The same action with one more example. */
    public Action forExample(String meaning, String typed) {
        List<Example> all = new ArrayList<>(examples);
        all.add(new Example(meaning, typed));
        return new Action(id, command, title, intro, arguments, all, button, timing, asksIfMistaken, entering);
    }
}
