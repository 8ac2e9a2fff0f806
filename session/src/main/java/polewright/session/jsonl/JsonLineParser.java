package polewright.session.jsonl;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import polewright.sky.InputRefused;
import polewright.sky.fields.FieldValue;

/** Parses one line of text to one JSON object. */
final class JsonLineParser {
    private static final int DEEPEST = 10;
    // NaN is accepted here so that it can be refused with the name of its key.
    private static final JsonFactory FACTORY = JsonFactory.builder()
            .enable(JsonReadFeature.ALLOW_NON_NUMERIC_NUMBERS)
            .build();

    private JsonLineParser() {}

    static FieldValue.Members parse(String line) {
        try (JsonParser parser = FACTORY.createParser(line)) {
            if (parser.nextToken() != JsonToken.START_OBJECT) {
                throw notAnEvent("the line begins with \"" + FieldValue.shortened(line.strip()) + "\"");
            }
            FieldValue.Members members = members(parser, 0);
            if (parser.nextToken() != null) {
                throw notAnEvent("there is text after the event's closing brace");
            }
            return members;
        } catch (JsonProcessingException e) {
            throw notAnEvent(where(e, line));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static FieldValue.Members members(JsonParser parser, int depth) throws IOException {
        if (depth > DEEPEST) {
            throw notAnEvent("the braces are nested more than " + DEEPEST + " deep");
        }
        Map<String, FieldValue> values = new LinkedHashMap<>();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String key = parser.currentName();
            FieldValue value = value(parser, parser.nextToken(), depth);
            if (values.put(key, value) != null) {
                throw new InputRefused(
                        "key \"" + FieldValue.shortened(key) + "\" is given twice, the second time with "
                                + value.quoted(),
                        "keep one of them");
            }
        }
        return new FieldValue.Members(values);
    }

    private static FieldValue.Items items(JsonParser parser, int depth) throws IOException {
        if (depth > DEEPEST) {
            throw notAnEvent("the brackets are nested more than " + DEEPEST + " deep");
        }
        List<FieldValue> values = new ArrayList<>();
        for (JsonToken token = parser.nextToken(); token != JsonToken.END_ARRAY; token = parser.nextToken()) {
            values.add(value(parser, token, depth));
        }
        return new FieldValue.Items(values);
    }

    private static FieldValue value(JsonParser parser, @Nullable JsonToken token, int depth) throws IOException {
        if (token == null) {
            throw notAnEvent("the line is incomplete");
        }
        return switch (token) {
            case START_OBJECT -> members(parser, depth + 1);
            case START_ARRAY -> items(parser, depth + 1);
            case VALUE_STRING -> new FieldValue.Text(parser.getText());
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> new FieldValue.Figure(parser.getText());
            case VALUE_TRUE -> new FieldValue.Flag(true);
            case VALUE_FALSE -> new FieldValue.Flag(false);
            case VALUE_NULL -> new FieldValue.Nothing();
            default -> throw new IllegalStateException("token " + token + " where a value was expected");
        };
    }

    private static String where(JsonProcessingException e, String line) {
        int column = e.getLocation() == null ? 1 : Math.max(1, e.getLocation().getColumnNr());
        if (column > line.stripTrailing().length()) {
            return "the line is incomplete at column " + column;
        }
        int from = Math.max(0, Math.min(column - 10, line.length()));
        int to = Math.min(line.length(), column + 10);
        return "column " + column + ", near \"" + FieldValue.shortened(line.substring(from, to)) + "\", is not JSON";
    }

    private static InputRefused notAnEvent(String what) {
        return new InputRefused(what, "write each event as one JSON object on a line of its own, as in docs/events.md");
    }
}
