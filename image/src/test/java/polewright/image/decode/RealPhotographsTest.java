package polewright.image.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.image.Frame;

/** Photographs of the real sky, with the stars measured in them (licences and sources in their folder's README). */
class RealPhotographsTest {
    private static final Path FOLDER = Path.of("..", "..", "shared", "frames");
    private static final Pattern STAR = Pattern.compile("\"x\": ([\\d.]+),\\s*\"y\": ([\\d.]+)");

    @ParameterizedTest
    @CsvSource({
        "granasat_polar_05sec.jpg, granasat_polar_05sec.json",
        "tetra3_Alt40_Azi135.tiff, tetra3_Alt40_Azi135.json",
        "tetra3_Alt60_Azim45.tiff, tetra3_Alt60_Azim45.json",
        "openstartracker_img6.png, openstartracker_img6.json",
    })
    void matchedStars_areBrightWhereMeasured(String picture, String measured) throws IOException {
        assumeTrue(
                Files.isDirectory(FOLDER),
                () -> "skipped: the real photographs are not at "
                        + FOLDER.toAbsolutePath().normalize());
        String json = Files.readString(FOLDER.resolve(measured));
        byte[] content = Files.readAllBytes(FOLDER.resolve(picture));
        Frame frame = FrameReader.read(content, picture, DecodeOptions.DEFAULT);
        assertThat(frame.width()).isEqualTo(number(json, "W"));
        assertThat(frame.height()).isEqualTo(number(json, "H"));
        assertThat(FrameCompleteness.of(content, picture, DecodeDeadline.NONE))
                .isEqualTo(new FrameCompleteness.Whole());

        PixelLevels sky = PixelLevels.of(frame.pixels());
        Matcher star = STAR.matcher(json);
        int stars = 0;
        int bright = 0;
        while (star.find()) {
            stars++;
            double peak = peak(frame, Double.parseDouble(star.group(1)), Double.parseDouble(star.group(2)));
            bright += peak > sky.level() + 2 * sky.spread() ? 1 : 0;
        }
        assertThat(stars).isGreaterThan(10);
        // Nearly all of the 40 brightest matched stars are above the noise in a single pixel.
        assertThat(bright).isGreaterThanOrEqualTo((int) Math.ceil(0.9 * stars));
    }

    private static double peak(Frame frame, double x, double y) {
        double peak = 0;
        for (int row = (int) y; row <= y + 1; row++) {
            for (int column = (int) x; column <= x + 1; column++) {
                peak = Math.max(peak, frame.pixels()[row * frame.width() + column]);
            }
        }
        return peak;
    }

    private static int number(String json, String key) {
        Matcher value = Pattern.compile("\"" + key + "\": (\\d+)").matcher(json);
        assertThat(value.find()).isTrue();
        return Integer.parseInt(value.group(1));
    }
}
