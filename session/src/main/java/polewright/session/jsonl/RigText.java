package polewright.session.jsonl;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import polewright.mount.rig.Rig;
import polewright.sky.InputRefused;
import polewright.sky.fields.FieldReader;

/** A rig as a JSON text of its own, with the same keys as inside a {@code begin} event. */
public final class RigText {
    private static final JsonFactory FACTORY = new JsonFactory();

    private RigText() {}

    /** On several lines, for a person to edit. */
    public static String write(Rig rig) {
        StringWriter text = new StringWriter();
        try (JsonParser line = FACTORY.createParser(JsonFieldWriter.line(out -> RigJson.write(out, rig)));
                JsonGenerator lines = FACTORY.createGenerator(text).setPrettyPrinter(new DefaultPrettyPrinter())) {
            for (JsonToken token = line.nextToken(); token != null; token = line.nextToken()) {
                if (token.isNumeric()) {
                    // Digit for digit: a double would lose digits, and a decimal the sign of a zero.
                    lines.writeNumber(line.getText());
                } else {
                    lines.copyCurrentEvent(line);
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException("a rig did not print", e);
        }
        return text + "\n";
    }

    /**
     * Parses a rig.
     *
     * @throws InputRefused if the text is not a rig; names the key
     */
    public static Rig read(String text) {
        try {
            return FieldReader.read(JsonLineParser.parse(text), RigJson::read);
        } catch (InputRefused e) {
            throw e.at("rig file");
        }
    }
}
