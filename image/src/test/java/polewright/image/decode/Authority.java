package polewright.image.decode;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** Files under {@code authorities}, and their values as read by other libraries. */
final class Authority {
    private Authority() {}

    static byte[] file(String path) {
        try (InputStream in = Authority.class.getResourceAsStream("/authorities/" + path)) {
            return Objects.requireNonNull(in, path).readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static List<String> lines(String path) {
        return new String(file(path), StandardCharsets.UTF_8).lines().skip(1).toList();
    }

    /** The values in a folder's table for each of its files, row by row. */
    static Map<String, List<Double>> pixels(String folder) {
        Map<String, List<Double>> pixels = new LinkedHashMap<>();
        for (String line : lines(folder + "/pixels.csv")) {
            String[] cells = line.split(",", -1);
            List<Double> values = pixels.computeIfAbsent(cells[0], name -> new ArrayList<>());
            for (int i = 2; i < cells.length; i++) {
                values.add(cells[i].equals("nan") ? Double.NaN : Double.parseDouble(cells[i]));
            }
        }
        return pixels;
    }
}
