package polewright.operations;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** A table under {@code authorities}: comma-separated, with a header line and no quotes. */
public final class ReferenceTable {
    private ReferenceTable() {}

    /** One row; its text is the display name in a parameterised test. */
    public record Row(Map<String, String> cells, String text) {
        public String cell(String column) {
            return Objects.requireNonNull(cells.get(column), column);
        }

        public double number(String column) {
            return Double.parseDouble(cell(column));
        }

        @Override
        public String toString() {
            return text;
        }
    }

    public static List<Row> rows(String file) {
        try (var reader = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(ReferenceTable.class.getResourceAsStream("/authorities/" + file), file),
                StandardCharsets.UTF_8))) {
            String[] header = reader.readLine().split(",", -1);
            List<Row> rows = new ArrayList<>();
            reader.lines().filter(line -> !line.isBlank()).forEach(line -> {
                String[] values = line.split(",", -1);
                Map<String, String> cells = new HashMap<>();
                for (int i = 0; i < header.length; i++) {
                    cells.put(header[i], values[i]);
                }
                rows.add(new Row(cells, line));
            });
            return rows;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
