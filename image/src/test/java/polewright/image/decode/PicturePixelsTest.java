package polewright.image.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.image.Frame;

/** Pixels of TIFF, PNG and JPEG files compared with those read by Pillow and tifffile. */
class PicturePixelsTest {
    private static final int WIDTH = 16;
    private static final int HEIGHT = 12;
    private static final Map<String, List<Double>> EXPECTED = Authority.pixels("pictures");

    static Stream<String> files() {
        return EXPECTED.keySet().stream();
    }

    static Frame read(String name) {
        return FrameReader.read(Authority.file("pictures/" + name), name, DecodeOptions.DEFAULT);
    }

    @ParameterizedTest
    @MethodSource("files")
    void pixels_agreeWithIndependentReaders(String name) {
        Frame frame = read(name);
        assertThat(frame.width()).isEqualTo(WIDTH);
        assertThat(frame.height()).isEqualTo(HEIGHT);
        List<Double> expected = Objects.requireNonNull(EXPECTED.get(name));
        for (int i = 0; i < WIDTH * HEIGHT; i++) {
            assertThat((double) frame.pixels()[i])
                    .as("pixel %d", i)
                    .isCloseTo(expected.get(i), within(tolerance(name, expected.get(i))));
        }
    }

    /**
     * JPEG decoders may differ by one level in rounding (ITU-T T.83 allows that much for the cosine transform), and one
     * level is up to 2.2 of 255 in linear light; colour adds one more rounding. The others are exact to float
     * precision.
     */
    private static double tolerance(String name, double expected) {
        if (!name.endsWith(".jpg")) {
            return 2 * Math.ulp((float) expected);
        }
        double slope = 2.3 * Math.pow(Math.max(expected, 1) / 255, 1 - 1 / 2.4);
        return (name.startsWith("colour") ? 2 : 1) * slope;
    }

    @Test
    void saturation_isTheLargestValueOfTheType() {
        assertThat(read("grey8.png").saturation()).isEqualTo(255);
        assertThat(read("grey16.tiff").saturation()).isEqualTo(65_535);
        assertThat(read("colour16.png").saturation()).isEqualTo(65_535);
        assertThat(read("grey.jpg").saturation()).isEqualTo(255);
        assertThat(read("float32.tiff").saturation()).isInfinite();
    }
}
