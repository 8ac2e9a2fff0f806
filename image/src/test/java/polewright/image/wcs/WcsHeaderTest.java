package polewright.image.wcs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.image.match.PixelPlace;
import polewright.image.match.PlatesAtHand;

/**
 * The header compared with astropy, which reads it with the reference WCS library: first with the table stored under
 * {@code authorities/wcs}, and also by running astropy if it is installed.
 */
@Tag("slow")
class WcsHeaderTest {
    // Required: 0.3 px. Both sides use the same formulas to rounding; the header's 14 digits leave some 1e-8 px.
    private static final double PIXELS = 1e-5;
    private static final String PYTHON = "/usr/bin/python3";

    @TempDir
    private Path folder;

    static List<PlatesAtHand.Named> plates() {
        return PlatesAtHand.all();
    }

    private static byte[] resource(String name) throws IOException {
        try (InputStream in = WcsHeaderTest.class.getResourceAsStream("/authorities/wcs/" + name)) {
            assertThat(in).as(name).isNotNull();
            return in.readAllBytes();
        }
    }

    /** Lines of x, y (the first pixel is 1), right ascension, declination. */
    private static void agree(PlatesAtHand.Named named, String table) {
        List<String> rows = table.lines().filter(l -> !l.startsWith("#")).toList();
        assertThat(rows).hasSizeGreaterThan(20);
        for (String row : rows) {
            String[] cells = row.split(",", -1);
            double x = Double.parseDouble(cells[0]);
            double y = Double.parseDouble(cells[1]);
            Vector3D seen = new Vector3D(
                    Math.toRadians(Double.parseDouble(cells[2])), Math.toRadians(Double.parseDouble(cells[3])));
            PixelPlace place = named.plate().toPixel(seen).orElseThrow();
            assertThat(place.x() + 1).as("%s %s", named.name(), row).isCloseTo(x, within(PIXELS));
            assertThat(place.y() + 1).as("%s %s", named.name(), row).isCloseTo(y, within(PIXELS));
        }
    }

    @ParameterizedTest
    @MethodSource("plates")
    void header_isTheOneComparedWithAstropy(PlatesAtHand.Named named) throws IOException {
        assertThat(new String(WcsHeader.of(named.plate()), StandardCharsets.US_ASCII))
                .isEqualTo(new String(resource(named.name() + ".hdr"), StandardCharsets.US_ASCII));
    }

    @ParameterizedTest
    @MethodSource("plates")
    void pixels_agreeWithAstropy(PlatesAtHand.Named named) throws IOException {
        agree(named, new String(resource(named.name() + ".csv"), StandardCharsets.US_ASCII));
    }

    @ParameterizedTest
    @MethodSource("plates")
    void installedAstropy_agrees(PlatesAtHand.Named named) throws Exception {
        assumeTrue(
                Files.isExecutable(Path.of(PYTHON)) && succeeds(PYTHON, "-c", "import astropy.wcs"),
                "python3-astropy is not installed: the kept table alone was checked");
        Path header = folder.resolve(named.name() + ".hdr");
        Files.write(header, WcsHeader.of(named.plate()));
        Path script = folder.resolve("make_tables.py");
        Files.write(script, resource("make_tables.py"));
        assertThat(succeeds(PYTHON, script.toString(), header.toString())).isTrue();
        agree(named, Files.readString(folder.resolve(named.name() + ".csv")));
    }

    @Test
    void header_isWholeBlocksOfCards() {
        for (PlatesAtHand.Named named : plates()) {
            byte[] header = WcsHeader.of(named.plate());
            assertThat(header.length % 2880).isZero();
            String text = new String(header, StandardCharsets.US_ASCII);
            assertThat(text).startsWith("SIMPLE  =                    T ").contains("END" + " ".repeat(77));
            assertThat(text.substring(text.indexOf("END     ") + 3)).isBlank();
        }
    }

    @Test
    void pinhole_hasNoPolynomials() {
        String header = new String(WcsHeader.of(plates().get(0).plate()), StandardCharsets.US_ASCII);
        assertThat(header).contains("CTYPE1  = 'RA---TAN'").doesNotContain("A_ORDER", "-SIP");
    }

    private static boolean succeeds(String... command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        return process.waitFor(120, TimeUnit.SECONDS) && process.exitValue() == 0;
    }
}
