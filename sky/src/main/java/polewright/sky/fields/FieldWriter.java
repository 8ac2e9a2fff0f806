package polewright.sky.fields;

import java.time.Duration;
import java.util.List;
import java.util.function.BiConsumer;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/** Writes the members of one object one after another; the counterpart of {@link FieldReader}. */
public abstract class FieldWriter {
    /** A decimal number, already formatted. */
    public abstract FieldWriter digits(String key, String digits);

    public abstract FieldWriter text(String key, String text);

    public abstract FieldWriter flag(String key, boolean value);

    public abstract <T> FieldWriter object(String key, T value, BiConsumer<FieldWriter, T> members);

    public abstract <T> FieldWriter list(String key, List<T> values, BiConsumer<FieldWriter, T> members);

    /** A finite number, by the shortest digits that read back to the same bits. */
    public final FieldWriter number(String key, double value) {
        if (!Double.isFinite(value)) {
            throw new InputRefused(key + " " + value + " is not a finite number", "give a plain number such as 2.5");
        }
        return digits(key, Digits.of(value));
    }

    public final FieldWriter whole(String key, long value) {
        return digits(key, Long.toString(value));
    }

    /** In the unit given by the suffix of the key. */
    public final FieldWriter angle(String key, Angle angle) {
        if (!Double.isFinite(angle.radians())) {
            throw new InputRefused(key + " " + angle.radians() + " is not a finite angle", "give a plain number");
        }
        return digits(key, AngleUnit.ofKey(key).write(angle));
    }

    /** In the unit that the key is or ends in. */
    public final FieldWriter duration(String key, Duration duration) {
        return digits(key, DurationUnit.ofKey(key).write(duration));
    }

    /** An enum's name in lower case. */
    public final FieldWriter word(String key, Enum<?> value) {
        return text(key, FieldReader.word(value));
    }
}
