package polewright.report.json;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;

/** Reads the notes from the JSON that a command printed. */
public final class NotesJson {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private NotesJson() {}

    /** In order; empty if the result has none. */
    public static List<String> of(String result) {
        try {
            List<String> notes = new ArrayList<>();
            MAPPER.readTree(result).path("notes").forEach(note -> notes.add(note.asText()));
            return notes;
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException("a command printed no JSON", e);
        }
    }
}
