package polewright.web.form;

import java.util.List;
import java.util.regex.Pattern;
import polewright.session.event.NightEvent;

/**
 * One field of a form.
 *
 * @param name the option it becomes, without the dashes; a positional argument has its own name
 * @param label what it asks for
 * @param hint how to read it off, or an example; may be empty
 * @param kind how it is filled in
 * @param isPositional whether it is a positional argument, in the order of the fields
 * @param isRequired whether the form cannot do without it
 * @param isSeldom whether it is seldom needed, and so hidden until requested
 */
public record Field(
        String name, String label, String hint, Kind kind, boolean isPositional, boolean isRequired, boolean isSeldom) {
    /** Most characters in any field: as many as a note may have. */
    static final int LONGEST = NightEvent.Noted.LONGEST;

    private static final Pattern WITH_COMMA = Pattern.compile("[+-]?\\d+,\\d+");

    /** How a field is filled in. */
    public sealed interface Kind {}

    /**
     * A number, typed as it is read.
     *
     * @param unit its unit, abbreviated
     * @param isEverBelowZero whether it may be negative
     */
    public record Figure(String unit, boolean isEverBelowZero) implements Kind {
        /** A number that is never negative. */
        public Figure(String unit) {
            this(unit, false);
        }
    }

    /** A few words. */
    public record Words() implements Kind {}

    /**
     * Several words, each a separate argument of the command.
     *
     * @param separator what separates them, a regular expression
     */
    public record Several(String separator) implements Kind {}

    /** One of a few options. */
    public record Choice(List<Option> options) implements Kind {
        public Choice {
            options = List.copyOf(options);
        }
    }

    /** Yes or no: an option without a value. */
    public record Tick() implements Kind {}

    /**
     * One option of a choice.
     *
     * @param value as it is typed; empty to leave the option out
     * @param label as it is shown
     */
    public record Option(String value, String label) {}

    /** An optional option. */
    public static Field option(String name, String label, String hint, Kind kind) {
        return new Field(name, label, hint, kind, false, false, false);
    }

    /** An optional positional argument. */
    public static Field positional(String name, String label, String hint, Kind kind) {
        return new Field(name, label, hint, kind, true, false, false);
    }

    public Field required() {
        return new Field(name, label, hint, kind, isPositional, true, isSeldom);
    }

    /** The same field, filled in by other means. */
    Field as(Kind other) {
        return new Field(name, label, hint, other, isPositional, isRequired, isSeldom);
    }

    public Field seldom() {
        return new Field(name, label, hint, kind, isPositional, isRequired, true);
    }

    /** Whether an entry can be part of a command at all: no line breaks, and not too long. */
    boolean isUsable(String value) {
        boolean plain = value.length() <= LONGEST && value.chars().noneMatch(Character::isISOControl);
        return plain
                && (!(kind instanceof Choice choice)
                        || choice.options().stream().anyMatch(o -> o.value().equals(value)));
    }

    /**
     * Which keyboard a phone should show. Some phones' decimal keyboards have no minus sign, so a field that may be
     * negative gets the full keyboard.
     *
     * @return a value of HTML's {@code inputmode}; empty if any keyboard will do
     */
    public String keys() {
        if (!(kind instanceof Figure figure)) {
            return "";
        }
        return figure.isEverBelowZero() ? "text" : "decimal";
    }

    /** The entry as a command takes it: the decimal keyboards of many phones have a comma and no point. */
    String asCommandWord(String value) {
        return kind instanceof Figure && WITH_COMMA.matcher(value).matches() ? value.replace(',', '.') : value;
    }

    public boolean isTick() {
        return kind instanceof Tick;
    }

    public String unit() {
        return kind instanceof Figure figure ? figure.unit() : "";
    }

    /** Empty unless the field is a choice. */
    public List<Option> options() {
        return kind instanceof Choice choice ? choice.options() : List.of();
    }
}
