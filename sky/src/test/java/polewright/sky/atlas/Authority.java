package polewright.sky.atlas;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Rows of the check files under {@code authorities}, without comments and heading. */
final class Authority {
    private Authority() {}

    static List<String[]> rows(String file) {
        try (InputStream in = Authority.class.getResourceAsStream("/authorities/" + file)) {
            if (in == null) {
                throw new IllegalStateException("no check file " + file);
            }
            return new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))
                    .lines()
                    .filter(line -> !line.startsWith("#"))
                    .skip(1)
                    .map(line -> line.split(",", -1))
                    .toList();
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }
}
