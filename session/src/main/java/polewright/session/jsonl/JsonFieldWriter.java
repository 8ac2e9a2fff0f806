package polewright.session.jsonl;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import polewright.sky.fields.FieldWriter;

/** Writes the members of one JSON object. */
final class JsonFieldWriter extends FieldWriter {
    private static final JsonFactory FACTORY = new JsonFactory();

    private final JsonGenerator out;

    private JsonFieldWriter(JsonGenerator out) {
        this.out = out;
    }

    /** One object as one line, without the line terminator. */
    static String line(Consumer<FieldWriter> members) {
        StringWriter text = new StringWriter();
        try (JsonGenerator generator = FACTORY.createGenerator(text)) {
            generator.writeStartObject();
            members.accept(new JsonFieldWriter(generator));
            generator.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    @Override
    public FieldWriter digits(String key, String digits) {
        return write(() -> {
            out.writeFieldName(key);
            out.writeNumber(digits);
        });
    }

    @Override
    public FieldWriter text(String key, String text) {
        return write(() -> out.writeStringField(key, text));
    }

    @Override
    public FieldWriter flag(String key, boolean value) {
        return write(() -> out.writeBooleanField(key, value));
    }

    @Override
    public <T> FieldWriter object(String key, T value, BiConsumer<FieldWriter, T> members) {
        return write(() -> {
            out.writeObjectFieldStart(key);
            members.accept(this, value);
            out.writeEndObject();
        });
    }

    @Override
    public <T> FieldWriter list(String key, List<T> values, BiConsumer<FieldWriter, T> members) {
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
