package polewright.web.form;

import java.util.List;
import java.util.regex.Pattern;
import polewright.session.event.NightEvent;

/**
 * One thing to fill in.
 *
 * @param name the option it becomes, without the dashes; a positional has a name of its own
 * @param label what it asks for
 * @param hint how to read it off, or an example; may be empty
 * @param kind how it is filled in
 * @param isPositional whether it stands in the command without an option's name, in the order of the fields
 * @param isRequired whether the form cannot do without it
 * @param isSeldom whether it is hardly ever needed, and so kept out of sight until it is asked for
 */
public record Field(
        String name, String label, String hint, Kind kind, boolean isPositional, boolean isRequired, boolean isSeldom) {
    /** Characters that any field takes: as many as a note may have. */
    static final int LONGEST = NightEvent.Noted.LONGEST;

    private static final Pattern WITH_COMMA = Pattern.compile("[+-]?\\d+,\\d+");

    /** How a field is filled in. */
    public sealed interface Kind {}

    /**
     * A number, typed as it is read.
     *
     * @param unit what it counts, short
     * @param isEverBelowZero whether a minus may stand before it
     */
    public record Figure(String unit, boolean isEverBelowZero) implements Kind {
        /** One that is never below zero. */
        public Figure(String unit) {
            this(unit, false);
        }
    }

    /** A few words. */
    public record Words() implements Kind {}

    /**
     * Several words of which each stands alone in the command.
     *
     * @param separator what splits them, a regular expression
     */
    public record Several(String separator) implements Kind {}

    /** One of a few. */
    public record Choice(List<Option> options) implements Kind {
        public Choice {
            options = List.copyOf(options);
        }
    }

    /** Yes or no; an option without a value. */
    public record Tick() implements Kind {}

    /**
     * One of a choice.
     *
     * @param value as it is typed; empty to leave the option out
     * @param label as it is read
     */
    public record Option(String value, String label) {}

    /** An option that may be left out. */
    public static Field option(String name, String label, String hint, Kind kind) {
        return new Field(name, label, hint, kind, false, false, false);
    }

    /** A word of the command that may be left out. */
    public static Field positional(String name, String label, String hint, Kind kind) {
        return new Field(name, label, hint, kind, true, false, false);
    }

    public Field required() {
        return new Field(name, label, hint, kind, isPositional, true, isSeldom);
    }

    /** The same filled in otherwise. */
    Field as(Kind other) {
        return new Field(name, label, hint, other, isPositional, isRequired, isSeldom);
    }

    public Field seldom() {
        return new Field(name, label, hint, kind, isPositional, isRequired, true);
    }

    /** What was filled in, if it can be put into a command at all: no line breaks, none of endless length. */
    boolean isUsable(String value) {
        boolean plain = value.length() <= LONGEST && value.chars().noneMatch(Character::isISOControl);
        return plain
                && (!(kind instanceof Choice choice)
                        || choice.options().stream().anyMatch(o -> o.value().equals(value)));
    }

    /**
     * Which keys a phone is to show. Some phones' keys for decimals have no minus: what may be below zero has them all.
     *
     * @return as HTML's {@code inputmode} takes it; empty where any keys will do
     */
    public String keys() {
        if (!(kind instanceof Figure figure)) {
            return "";
        }
        return figure.isEverBelowZero() ? "text" : "decimal";
    }

    /** What was filled in as a command takes it: the keys for decimals of many a phone have a comma and no point. */
    String asCommandWord(String value) {
        return kind instanceof Figure && WITH_COMMA.matcher(value).matches() ? value.replace(',', '.') : value;
    }

    public boolean isTick() {
        return kind instanceof Tick;
    }

    public String unit() {
        return kind instanceof Figure figure ? figure.unit() : "";
    }

    /** Empty for what is no choice. */
    public List<Option> options() {
        return kind instanceof Choice choice ? choice.options() : List.of();
    }
}
