package polewright.session.jsonl;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/** Writes the members of one JSON object one after another; the counterpart of {@link FieldReader}. */
final class FieldWriter {
    private static final JsonFactory FACTORY = new JsonFactory();

    private final JsonGenerator out;

    private FieldWriter(JsonGenerator out) {
        this.out = out;
    }

    /** One object as one line, without the line terminator. */
    static String line(Consumer<FieldWriter> members) {
        StringWriter text = new StringWriter();
        try (JsonGenerator generator = FACTORY.createGenerator(text)) {
            generator.writeStartObject();
            members.accept(new FieldWriter(generator));
            generator.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    FieldWriter number(String key, double value) {
        if (!Double.isFinite(value)) {
            throw new InputRefused(key + " " + value + " is not a finite number", "give a plain number such as 2.5");
        }
        return digits(key, Digits.of(value));
    }

    FieldWriter whole(String key, long value) {
        return digits(key, Long.toString(value));
    }

    /** In the unit given by the ending of the key. */
    FieldWriter angle(String key, Angle angle) {
        if (!Double.isFinite(angle.radians())) {
            throw new InputRefused(key + " " + angle.radians() + " is not a finite angle", "give a plain number");
        }
        return digits(key, AngleUnit.ofKey(key).write(angle));
    }

    /** In the unit that the key is or ends in. */
    FieldWriter duration(String key, Duration duration) {
        return digits(key, DurationUnit.ofKey(key).write(duration));
    }

    FieldWriter digits(String key, String digits) {
        return write(() -> {
            out.writeFieldName(key);
            out.writeNumber(digits);
        });
    }

    FieldWriter text(String key, String text) {
        return write(() -> out.writeStringField(key, text));
    }

    FieldWriter word(String key, Enum<?> value) {
        return text(key, FieldReader.word(value));
    }

    FieldWriter flag(String key, boolean value) {
        return write(() -> out.writeBooleanField(key, value));
    }

    <T> FieldWriter object(String key, T value, BiConsumer<FieldWriter, T> members) {
        return write(() -> {
            out.writeObjectFieldStart(key);
            members.accept(this, value);
            out.writeEndObject();
        });
    }

    <T> FieldWriter list(String key, List<T> values, BiConsumer<FieldWriter, T> members) {
        return write(() -> {
            out.writeArrayFieldStart(key);
            for (T value : values) {
                out.writeStartObject();
                members.accept(this, value);
                out.writeEndObject();
            }
            out.writeEndArray();
        });
    }

    private FieldWriter write(Step step) {
        try {
            step.run();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return this;
    }

    private interface Step {
        void run() throws IOException;
    }
}
