package polewright.night.jsonl;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.cfg.JsonNodeFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import polewright.axis.rig.Rig;
import polewright.sky.InputRefused;

/** A rig as a JSON text of its own, with the keys that it has inside a {@code begin} event. */
public final class RigText {
    // A number may have more figures than a double: with fewer it would not read back to the same angle.
    private static final ObjectMapper MAPPER = JsonMapper.builder()
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES)
            .build();

    private RigText() {}

    /** Over several lines, for a person to edit. */
    public static String write(Rig rig) {
        try {
            Object tree = MAPPER.readTree(FieldWriter.line(out -> RigJson.write(out, rig)));
            return MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(tree) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a rig did not print", e);
        }
    }

    /**
     * Reads a rig's text.
     *
     * @throws InputRefused when the text is no rig; names the key
     */
    public static Rig read(String text) {
        try {
            return FieldReader.read(JsonLineParser.parse(text), RigJson::read);
        } catch (InputRefused e) {
            throw e.at("rig file");
        }
    }
}
