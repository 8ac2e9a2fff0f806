package polewright.sky.atlas;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Tab-separated tables bundled in the jar next to this class; lines starting with # are comments. */
final class BundledTable {
    private BundledTable() {}

    static InputStream open(String name) throws IOException {
        InputStream in = BundledTable.class.getResourceAsStream(name);
        if (in == null) {
            throw new IOException("the table " + name + " is missing from this build");
        }
        return in;
    }

    /** The rows, each with exactly the given number of columns. */
    static List<String[]> rows(String name, int columns) {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(open(name), StandardCharsets.UTF_8))) {
            return reader.lines()
                    .filter(line -> !line.startsWith("#"))
                    .map(line -> columnsOf(line, name, columns))
                    .toList();
        } catch (IOException broken) {
            throw new UncheckedIOException("the bundled table " + name + " cannot be read", broken);
        }
    }

    private static String[] columnsOf(String line, String name, int columns) {
        String[] row = line.split("\t", -1);
        if (row.length != columns) {
            throw new IllegalStateException(name + ": " + row.length + " columns, expected " + columns + ": " + line);
        }
        return row;
    }

    /** The items of a list column; none when it is empty. */
    static List<String> list(String column) {
        return column.isEmpty() ? List.of() : List.of(column.split(";", -1));
    }
}
