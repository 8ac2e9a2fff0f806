package polewright.data;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** Writes tab-separated tables with comments at the top, identical on every machine. */
final class TableFile {
    private TableFile() {}

    static void write(Path file, List<String> comments, List<String> rows) {
        StringBuilder text = new StringBuilder();
        comments.forEach(comment -> text.append("# ").append(comment).append('\n'));
        rows.forEach(row -> text.append(row).append('\n'));
        try {
            Files.createDirectories(file.toAbsolutePath().getParent());
            Files.writeString(file, text, StandardCharsets.UTF_8);
        } catch (IOException broken) {
            throw new UncheckedIOException("cannot write " + file, broken);
        }
        System.out.println(file + ": " + rows.size() + " rows, " + text.length() + " characters");
    }

    /** Joined by the separator at which the reader splits lists. */
    static String list(List<String> parts) {
        parts.forEach(part -> {
            if (part.contains(";") || part.contains("\t")) {
                throw new IllegalArgumentException("'" + part + "' has a separator in it");
            }
        });
        return String.join(";", parts);
    }

    /** A number with at most this many decimals, without trailing zeros. */
    static String number(double value, int decimals) {
        String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
        String trimmed = text.contains(".") ? text.replaceAll("0+$", "").replaceAll("\\.$", "") : text;
        return trimmed.equals("-0") ? "0" : trimmed;
    }
}
