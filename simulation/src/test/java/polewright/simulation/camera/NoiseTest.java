package polewright.simulation.camera;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.sky.angle.Angle;
import polewright.sky.place.CatalogueStar;

class NoiseTest {
    private record Moments(double mean, double variance, double skewness) {
        static Moments of(double[] values) {
            double mean = 0;
            for (double value : values) {
                mean += value / values.length;
            }
            double second = 0;
            double third = 0;
            for (double value : values) {
                second += (value - mean) * (value - mean) / values.length;
                third += Math.pow(value - mean, 3) / values.length;
            }
            return new Moments(mean, second, third / Math.pow(second, 1.5));
        }
    }

    @ParameterizedTest
    @CsvSource({"0, 2", "0.3, 0", "3, 1.5", "11.9, 3", "12.1, 0", "12.1, 3", "60, 3", "5000, 5"})
    void charge_hasTheMomentsOfPoissonAndReadNoise(double mean, double readNoise) {
        int n = 400_000;
        ChargeNoise noise = new ChargeNoise(7, readNoise);
        double[] drawn = new double[n];
        for (int i = 0; i < n; i++) {
            drawn[i] = noise.drawn(mean);
        }

        Moments moments = Moments.of(drawn);

        // Sampling errors at 4 sigma; skewness of Poisson is 1/√mean, and read noise adds none of its own.
        double variance = mean + readNoise * readNoise;
        assertThat(moments.mean()).isCloseTo(mean, within(4 * Math.sqrt(variance / n)));
        assertThat(moments.variance())
                .isCloseTo(variance, within(4 * variance * Math.sqrt((2 + 1 / Math.max(mean, 0.3)) / n)));
        assertThat(moments.skewness()).isCloseTo(mean / Math.pow(variance, 1.5), within(0.03));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.2, 2, 8})
    void fewElectrons_arePoissonDistributed(double mean) {
        int n = 200_000;
        ChargeNoise noise = new ChargeNoise(11, 0);
        int[] seen = new int[60];
        for (int i = 0; i < n; i++) {
            double drawn = noise.drawn(mean);
            assertThat(drawn).isEqualTo(Math.rint(drawn));
            seen[(int) drawn]++;
        }

        double probability = Math.exp(-mean);
        for (int count = 0; count < 20; count++) {
            double expected = n * probability;
            assertThat((double) seen[count]).isCloseTo(expected, within(4.5 * Math.sqrt(expected) + 1));
            probability *= mean / (count + 1);
        }
    }

    private static Exposure blankSky(double skyMagnitude, double gain) {
        Detector detector =
                new Detector(400, 300, 3.6, gain, 4, 50_000, 16, 300, 0, false, AmpGlow.NONE, PixelFaults.NONE, 0);
        SimulatedCamera camera = SimulatedCamera.of("blank", CameraOptics.clean(2000, 60, 6), detector);
        Night night = Night.LARKFELL;
        return night.exposure(
                camera,
                CameraPath.standing(night.toward(CatalogueStar.fixed(Angle.ofDegrees(330), Angle.ofDegrees(62.3)), 0)),
                SkyConditions.EVEN.withSky(skyMagnitude),
                Duration.ofSeconds(20));
    }

    @ParameterizedTest
    @CsvSource({"15, 1", "15, 3.3", "12, 1"})
    void counts_varyByShotAndReadNoiseOverTheGain(double skyMagnitude, double gain) {
        Exposure exposure = blankSky(skyMagnitude, gain);
        double scale = Math.toDegrees(Math.atan(3.6e-3 / 2000)) * 3600;
        double electrons = Math.PI * 9 * 1.5e6 * Math.pow(10, -0.4 * skyMagnitude) * scale * scale * 20;
        float[] average = Night.RENDERER.renderWithoutNoise(exposure).frame().pixels();
        float[] counts = Night.RENDERER.render(exposure, new Random(3)).frame().pixels();

        // Where there is no star.
        Moments moments = Moments.of(IntStream.range(0, counts.length)
                .filter(i -> average[i] < 300 + electrons / gain * 1.0001 + 0.001)
                .mapToDouble(i -> counts[i])
                .toArray());

        // Rounding to whole counts adds 1/12.
        double variance = (electrons + 16) / (gain * gain) + 1 / 12.0;
        assertThat(moments.mean()).isCloseTo(300 + electrons / gain, within(0.02 + electrons / gain * 5e-4));
        assertThat(moments.variance()).isCloseTo(variance, within(variance * 0.03));
    }

    @Test
    void sameSeed_givesTheSameFrame_anotherDiffers() {
        Night night = Night.LARKFELL;
        SimulatedCamera camera = SimulatedCamera.guideCamera();
        Exposure exposure = night.exposure(
                camera.with(camera.detector().withSize(320, 240)),
                CameraPath.standing(night.toward("Deneb", 0)),
                SkyConditions.COUNTRY,
                Duration.ofSeconds(30));

        float[] first =
                Night.RENDERER.render(exposure, new SplittableRandom(5)).frame().pixels();
        float[] again =
                Night.RENDERER.render(exposure, new SplittableRandom(5)).frame().pixels();
        float[] other =
                Night.RENDERER.render(exposure, new SplittableRandom(6)).frame().pixels();

        assertThat(again).isEqualTo(first);
        int same = 0;
        for (int i = 0; i < first.length; i++) {
            same += first[i] == other[i] ? 1 : 0;
        }
        assertThat(same).isLessThan(first.length / 5);
    }

    @Test
    void rowsAndColumns_shareNoNoise() {
        float[] pixels =
                Night.RENDERER.render(blankSky(13, 1), new Random(1)).frame().pixels();
        double mean = 0;
        for (float pixel : pixels) {
            mean += pixel / pixels.length;
        }
        double variance = 0;
        double acrossRows = 0;
        double acrossColumns = 0;
        for (int i = 0; i < pixels.length - 400; i++) {
            variance += (pixels[i] - mean) * (pixels[i] - mean);
            acrossRows += (pixels[i] - mean) * (pixels[i + 400] - mean);
            acrossColumns += (pixels[i] - mean) * (pixels[i + 1] - mean);
        }

        assertThat(acrossRows / variance).isCloseTo(0, within(0.015));
        assertThat(acrossColumns / variance).isCloseTo(0, within(0.015));
    }
}
