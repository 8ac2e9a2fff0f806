package polewright.sky;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** A table under {@code src/test/resources/authorities}: comma-separated, a header line, quotes where a cell needs them. */
public final class AuthorityTable {
    private AuthorityTable() {}

    /** One row; its text is what a parameterised test shows. */
    public record Row(Map<String, String> cells) {
        public String text(String column) {
            String cell = cells.get(column);
            if (cell == null) {
                throw new IllegalArgumentException("no column " + column + " in " + cells.keySet());
            }
            return cell;
        }

        public double number(String column) {
            return Double.parseDouble(text(column));
        }

        public boolean has(String column) {
            return !text(column).isEmpty();
        }

        @Override
        public String toString() {
            return String.join(",", cells.values());
        }
    }

    public static Stream<Row> rows(String file) {
        List<List<String>> lines = new ArrayList<>();
        try (var reader = new BufferedReader(new InputStreamReader(
                AuthorityTable.class.getResourceAsStream("/authorities/" + file), StandardCharsets.UTF_8))) {
            reader.lines()
                    .filter(line -> !line.isBlank())
                    .map(AuthorityTable::cells)
                    .forEach(lines::add);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        List<String> header = lines.get(0);
        return lines.stream().skip(1).map(cells -> {
            Map<String, String> row = new LinkedHashMap<>();
            for (int i = 0; i < header.size(); i++) {
                row.put(header.get(i), i < cells.size() ? cells.get(i) : "");
            }
            return new Row(row);
        });
    }

    /** The rows of a table that has a column {@code id}. */
    public static Map<String, Row> byId(String file) {
        Map<String, Row> rows = new TreeMap<>();
        rows(file).forEach(row -> rows.put(row.text("id"), row));
        return rows;
    }

    private static List<String> cells(String line) {
        List<String> cells = new ArrayList<>();
        var cell = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c == '"' && quoted && i + 1 < line.length() && line.charAt(i + 1) == '"') {
                cell.append('"');
                i++;
            } else if (c == '"') {
                quoted = !quoted;
            } else if (c == ',' && !quoted) {
                cells.add(cell.toString());
                cell.setLength(0);
            } else {
                cell.append(c);
            }
        }
        cells.add(cell.toString());
        return cells;
    }
}
