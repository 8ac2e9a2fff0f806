package polewright.sky.fields;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.time.SkyTime;

/** Reads the members of one JSON object by key. Tracks the keys read, so that an unknown key is refused at the end. */
public final class FieldReader {
    private static final double LONGEST_DURATION = 1e6;

    private final String path;
    private final Map<String, FieldValue> values;
    private final Set<String> asked = new LinkedHashSet<>();

    private FieldReader(String path, FieldValue.Members members) {
        this.path = path;
        this.values = members.values();
    }

    /** Reads a whole object and refuses unread keys. */
    public static <T> T read(FieldValue.Members members, Function<FieldReader, T> reader) {
        return read("", members, reader);
    }

    private static <T> T read(String path, FieldValue.Members members, Function<FieldReader, T> reader) {
        FieldReader fields = new FieldReader(path, members);
        T read = reader.apply(fields);
        fields.refuseUnasked();
        return read;
    }

    public boolean has(String key) {
        asked.add(key);
        return values.containsKey(key);
    }

    public double number(String key) {
        return decimal(key).nearest();
    }

    public double number(String key, double whenLeftOut) {
        return has(key) ? number(key) : whenLeftOut;
    }

    public long whole(String key) {
        String digits = digits(key);
        try {
            return Long.parseLong(digits);
        } catch (NumberFormatException e) {
            throw refused(key, " is not a whole number", "count 1, 2, 3 and so on");
        }
    }

    /** A decimal number in full, regardless of the precision of a double. */
    public String digits(String key) {
        return decimal(key).digits();
    }

    /**
     * A finite decimal number.
     *
     * @param nearest the nearest double
     */
    private record Decimal(String digits, double nearest) {}

    private Decimal decimal(String key) {
        if (!(value(key) instanceof FieldValue.Figure number)) {
            throw refused(key, " is not a number", "give a plain number such as 2.5, without quotes");
        }
        String digits = number.digits();
        double nearest = isNamed(digits) ? Double.NaN : Double.parseDouble(digits);
        if (!Double.isFinite(nearest)) {
            throw refused(key, " is not a finite number", "give a plain number such as 2.5");
        }
        return new Decimal(digits, nearest);
    }

    /** Whether it has letters, as in NaN, INF or Infinity; a decimal has none except e. */
    private static boolean isNamed(String digits) {
        for (int i = 0; i < digits.length(); i++) {
            char lower = Character.toLowerCase(digits.charAt(i));
            if (lower >= 'a' && lower <= 'z' && lower != 'e') {
                return true;
            }
        }
        return false;
    }

    /** An angle in the unit given by the ending of the key, at most a whole turn in either direction. */
    public Angle angle(String key) {
        AngleUnit unit = AngleUnit.ofKey(key);
        Decimal decimal = decimal(key);
        if (Math.abs(decimal.nearest()) > unit.perTurn()) {
            throw refused(
                    key,
                    " is beyond a whole turn",
                    "give " + unit.words() + ", from -" + unit.perTurn() + " to " + unit.perTurn());
        }
        return unit.read(decimal.digits(), decimal.nearest());
    }

    public Angle angle(String key, Angle whenLeftOut) {
        return has(key) ? angle(key) : whenLeftOut;
    }

    /** A time in the unit that the key is or ends in, a year or so at most. */
    public Duration duration(String key) {
        DurationUnit unit = DurationUnit.ofKey(key);
        Decimal decimal = decimal(key);
        if (Math.abs(decimal.nearest()) > LONGEST_DURATION) {
            throw refused(key, " is more than a night", "give how many " + unit.words() + " it took");
        }
        return unit.read(decimal.digits());
    }

    public String text(String key) {
        if (!(value(key) instanceof FieldValue.Text text)) {
            throw refused(key, " is not a text", "put it in double quotes");
        }
        if (text.value().isBlank()) {
            throw refused(key, " is empty", "write something, or leave the key out");
        }
        return text.value();
    }

    public boolean flag(String key) {
        if (!(value(key) instanceof FieldValue.Flag flag)) {
            throw refused(key, " is neither true nor false", "give true or false, without quotes");
        }
        return flag.value();
    }

    /** ISO 8601 with a time zone. */
    public Instant instant(String key) {
        String text = text(key);
        try {
            Instant instant = OffsetDateTime.parse(text).toInstant();
            return SkyTime.of(instant).utc();
        } catch (DateTimeParseException e) {
            if (isWithoutZone(text)) {
                throw refused(key, " has no zone", "end it with Z for UTC, or with +01:00 for a clock one hour ahead");
            }
            throw refused(key, " is not a time", "write it like 2026-01-15T21:30:00Z, in UTC");
        } catch (InputRefused e) {
            throw e.at(path + key);
        }
    }

    /** One of an enum's names in lower case. */
    public <E extends Enum<E>> E choice(String key, Class<E> type) {
        String text = text(key);
        List<String> words = new ArrayList<>();
        for (E candidate : type.getEnumConstants()) {
            String word = word(candidate);
            if (word.equals(text)) {
                return candidate;
            }
            words.add(word);
        }
        throw refused(key, " is not known", "use " + (words.size() == 1 ? "" : "one of ") + String.join(", ", words));
    }

    public static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT);
    }

    public <T> T object(String key, Function<FieldReader, T> reader) {
        return object(path + key, value(key), reader);
    }

    public <T> List<T> list(String key, Function<FieldReader, T> reader) {
        if (!(value(key) instanceof FieldValue.Items items)) {
            throw refused(key, " is not a list", "put its entries between [ and ]");
        }
        List<T> read = new ArrayList<>();
        for (FieldValue item : items.values()) {
            read.add(object(path + key + "[" + (read.size() + 1) + "]", item, reader));
        }
        return read;
    }

    private static <T> T object(String path, FieldValue value, Function<FieldReader, T> reader) {
        if (!(value instanceof FieldValue.Members members)) {
            throw new InputRefused(
                    path + " " + value.quoted() + " is not an object", "put its keys and values between { and }");
        }
        return read(path + ".", members, reader);
    }

    /** A refusal that names the key and its value. */
    public InputRefused refused(String key, String whatIsWrong, String remedy) {
        FieldValue value = values.get(key);
        return new InputRefused(path + key + (value == null ? "" : " " + value.quoted()) + whatIsWrong, remedy);
    }

    /**
     * The result of {@code construction}; if the value's own type refuses it, the message is prefixed with the object's
     * path.
     */
    public <T> T made(Supplier<T> construction) {
        try {
            return construction.get();
        } catch (InputRefused e) {
            throw path.isEmpty() ? e : e.at(path.substring(0, path.length() - 1));
        }
    }

    private FieldValue value(String key) {
        asked.add(key);
        FieldValue value = values.get(key);
        if (value == null) {
            throw new InputRefused(path + key + " is missing", "add it; docs/events.md describes it");
        }
        return value;
    }

    private void refuseUnasked() {
        for (var entry : values.entrySet()) {
            if (!asked.contains(entry.getKey())) {
                throw new InputRefused(
                        "key \"" + path + FieldValue.shortened(entry.getKey()) + "\" with "
                                + entry.getValue().quoted() + " is not known here",
                        "the keys are " + String.join(", ", asked));
            }
        }
    }

    private static boolean isWithoutZone(String text) {
        try {
            LocalDateTime.parse(text);
            return true;
        } catch (DateTimeParseException e) {
            return false;
        }
    }
}
