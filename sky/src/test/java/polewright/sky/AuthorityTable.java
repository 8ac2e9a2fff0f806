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
import java.util.stream.Stream;
import polewright.sky.angle.Angle;

/** A table under {@code src/test/resources/authorities}: comma-separated, a header line, quotes where needed. */
public final class AuthorityTable {
    private AuthorityTable() {}

    /** One row; its text is the display name of a parameterised test. */
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

    /** A value of {@code published/published_values.csv}, in the unit given in its row. */
    public static double published(String id) {
        return Double.parseDouble(publishedText(id));
    }

    /** A sexagesimal value of that table, {@code 13h10m46.3668s} or {@code -6d43'11.61"}. */
    public static Angle publishedAngle(String id) {
        String text = publishedText(id);
        String[] parts = text.split("[hdm's\"]", -1);
        double units = Math.abs(Double.parseDouble(parts[0]))
                + Double.parseDouble(parts[1]) / 60
                + Double.parseDouble(parts[2]) / 3600;
        Angle size = text.contains("h") ? Angle.ofHours(units) : Angle.ofDegrees(units);
        return text.startsWith("-") ? size.negated() : size;
    }

    private static String publishedText(String id) {
        return rows("published/published_values.csv")
                .filter(row -> row.text("id").equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no published value " + id))
                .text("expected");
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
