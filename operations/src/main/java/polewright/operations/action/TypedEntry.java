package polewright.operations.action;

import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;

/** What was typed for one argument. */
public final class TypedEntry {
    /** Most characters in any field: as many as a note may have. */
    private static final int LONGEST = NightEvent.Noted.LONGEST;

    private static final Pattern WITH_COMMA = Pattern.compile("[+-]?\\d+,\\d+");

    private TypedEntry() {}

    /** Whether it can be part of a command: no line breaks, not too long, and one of the options if there are any. */
    public static boolean isUsable(Argument<?> argument, String value) {
        boolean plain = value.length() <= LONGEST && value.chars().noneMatch(Character::isISOControl);
        List<ArgumentType.Option> options = argument.type().options();
        return plain
                && (options.isEmpty()
                        || options.stream().anyMatch(option -> option.value().equals(value))
                        || isReadable(argument, value));
    }

    private static boolean isReadable(Argument<?> argument, String value) {
        try {
            argument.type().parse(value);
            return true;
        } catch (InputRefused refused) {
            return false;
        }
    }

    /** As a command takes it: the decimal keyboards of many phones have a comma and no point. */
    public static String asTyped(Argument<?> argument, String value) {
        return argument.type().isDecimal() && WITH_COMMA.matcher(value).matches() ? value.replace(',', '.') : value;
    }

    /**
     * The same for an entry that was sent; blank stays blank.
     *
     * @throws InputRefused if it cannot be used
     */
    public static String checked(Argument<?> argument, String filled) {
        String value = filled.strip();
        if (value.length() > LONGEST) {
            throw new InputRefused(
                    String.format(
                            Locale.ROOT,
                            "'%s' has %,d characters, and the limit is %,d",
                            argument.label(),
                            value.length(),
                            LONGEST),
                    "shorten it, or send it in parts");
        }
        if (!value.isEmpty() && !isUsable(argument, value)) {
            throw new InputRefused("'" + argument.label() + "' cannot be used", "fill it in again");
        }
        return asTyped(argument, value);
    }
}
