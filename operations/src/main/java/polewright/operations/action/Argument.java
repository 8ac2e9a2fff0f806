package polewright.operations.action;

import java.time.Instant;
import polewright.operations.action.ArgumentType.Words;
import polewright.operations.input.UtcInput;

/**
 * One argument of an action: an option of the terminal, a field of a page.
 *
 * @param name in lower-case letters and hyphens
 * @param label what it asks for, a few words
 * @param hint how to read it, or an example, in whole sentences; may be empty
 * @param otherwise what applies if it is left out, without capital or full stop; may be empty
 * @param isPositional whether it is given without its name, in the order of the arguments
 * @param isRequired whether the action needs it
 * @param isSeldom whether it is rarely needed, and so hidden on a page under <i>More</i>
 * @param <T> its value
 */
public record Argument<T>(
        String name,
        String label,
        String hint,
        String otherwise,
        ArgumentType<T> type,
        boolean isPositional,
        boolean isRequired,
        boolean isSeldom) {
    /** An argument that may be left out. */
    public static <T> Argument<T> option(String name, String label, String hint, ArgumentType<T> type) {
        return new Argument<>(name, label, hint, "", type, false, false, false);
    }

    /** An argument given by its position. */
    public static <T> Argument<T> positional(String name, String label, String hint, ArgumentType<T> type) {
        return new Argument<>(name, label, hint, "", type, true, false, false);
    }

    /** The time at which something begins: an option called {@code at}. */
    public static Argument<Instant> begins(String label) {
        return option("at", label, "With time zone: 2026-11-25T20:00Z.", new Words<>("TIME", new UtcInput()::convert));
    }

    public Argument<T> required() {
        return new Argument<>(name, label, hint, otherwise, type, isPositional, true, isSeldom);
    }

    public Argument<T> seldom() {
        return new Argument<>(name, label, hint, otherwise, type, isPositional, isRequired, true);
    }

    /** The same argument, always shown. */
    public Argument<T> usual() {
        return new Argument<>(name, label, hint, otherwise, type, isPositional, isRequired, false);
    }

    /** The same argument with what applies if it is left out. */
    public Argument<T> otherwise(String what) {
        return new Argument<>(name, label, hint, what, type, isPositional, isRequired, isSeldom);
    }

    /** The same argument filled in another way. */
    public Argument<T> as(ArgumentType<T> other) {
        return new Argument<>(name, label, hint, otherwise, other, isPositional, isRequired, isSeldom);
    }
}
