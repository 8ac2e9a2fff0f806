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

/** Pixels of FITS files compared with those read by astropy. */
class FitsPixelsTest {
    private static final int WIDTH = 16;
    private static final int HEIGHT = 12;
    private static final Map<String, List<Double>> EXPECTED = Authority.pixels("fits");

    static Stream<String> files() {
        return EXPECTED.keySet().stream();
    }

    static Frame read(String name) {
        return FrameReader.read(Authority.file("fits/" + name), name, DecodeOptions.DEFAULT);
    }

    @ParameterizedTest
    @MethodSource("files")
    void pixels_agreeWithAnIndependentReader(String name) {
        Frame frame = read(name);
        assertThat(frame.width()).isEqualTo(WIDTH);
        assertThat(frame.height()).isEqualTo(HEIGHT);
        List<Double> expected = Objects.requireNonNull(EXPECTED.get(name));
        for (int i = 0; i < WIDTH * HEIGHT; i++) {
            float value = expected.get(i).floatValue();
            if (Float.isNaN(value)) {
                assertThat(frame.pixels()[i]).as("pixel %d", i).isNaN();
            } else {
                // Three planes are averaged in single precision: two rounding steps.
                double step = name.startsWith("colour") ? 2 * Math.ulp(value) : 0;
                assertThat((double) frame.pixels()[i]).as("pixel %d", i).isCloseTo(value, within(step));
            }
        }
    }

    @Test
    void everyPixelType_isCovered() {
        assertThat(EXPECTED)
                .containsKeys("uint8.fits", "int16.fits", "uint16.fits", "int32.fits", "float32.fits", "float64.fits")
                .containsKeys("scaled.fits", "colour.fits", "extension.fits")
                .containsKeys(
                        "rice.fits", "gzip1.fits", "gzip2.fits", "hcompress.fits", "plio.fits", "rice-float.fits");
    }

    @Test
    void saturation_isTheLargestValueOfTheType() {
        assertThat(read("uint8.fits").saturation()).isEqualTo(255);
        assertThat(read("int16.fits").saturation()).isEqualTo(32_767);
        assertThat(read("uint16.fits").saturation()).isEqualTo(65_535);
        assertThat(read("scaled.fits").saturation()).isEqualTo(100 + 0.25f * 32_767);
        assertThat(read("rice.fits").saturation()).isEqualTo(65_535);
        assertThat(read("float32.fits").saturation()).isInfinite();
    }
}
