package polewright.simulation.camera;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.image.Frame;

class DetectorTest {
    private static final Night NIGHT = Night.LARKFELL;

    private static Detector detector(double fullWell, int bits, boolean bleeds, PixelFaults faults, double rays) {
        return new Detector(200, 160, 3.6, 1, 3, fullWell, bits, 100, 0, bleeds, AmpGlow.NONE, faults, rays);
    }

    private static Frame frame(Detector detector, double seconds, int seed) {
        SimulatedCamera camera = Night.smallCamera().with(detector);
        Exposure exposure = NIGHT.tracked(camera, NIGHT.toward("Polaris", 0), seconds);
        return Night.RENDERER.render(exposure, new Random(seed)).frame();
    }

    @ParameterizedTest
    @CsvSource({"20000, 16, 20100", "20000, 12, 4095", "100000, 16, 65535"})
    void saturatedPixel_readsTheWellOrTheLargestCount(double well, int bits, float full) {
        Frame frame = frame(detector(well, bits, false, PixelFaults.NONE, 0), 10, 1);

        assertThat(frame.saturation()).isEqualTo(full);
        assertThat(frame.pixels()[80 * 200 + 100]).isEqualTo(full);
        for (float count : frame.pixels()) {
            assertThat(count).isBetween(0f, full);
            assertThat(count).isEqualTo((float) Math.rint(count));
        }
    }

    @Test
    void withoutAntiBlooming_chargeRunsAlongTheColumnWithoutLoss() {
        Frame bleeding = frame(detector(20_000, 16, true, PixelFaults.NONE, 0), 0.4, 1);
        Frame drained = frame(detector(20_000, 16, false, PixelFaults.NONE, 0), 0.4, 1);

        int tall = full(bleeding, 0, 1);
        int wide = full(bleeding, 1, 0);

        assertThat(tall).isGreaterThan(5 * wide);
        assertThat(full(drained, 0, 1)).isEqualTo(full(drained, 1, 0));
        // All of the star's charge is somewhere in its columns; with the drained detector most of it is lost.
        double expected = NIGHT_POLARIS_ELECTRONS * 0.4;
        assertThat(above(bleeding)).isCloseTo(expected, within(expected * 0.01));
        assertThat(above(drained)).isLessThan(expected * 0.5);
    }

    // V 1.98 through 60 mm of aperture: π·3² cm² · 1.5e6 electrons a second and cm².
    private static final double NIGHT_POLARIS_ELECTRONS = Night.RENDERER
                    .renderWithoutNoise(NIGHT.tracked(Night.smallCamera(), NIGHT.toward("Polaris", 0), 2))
                    .truth()
                    .stars()
                    .get(0)
                    .electrons()
            / 2;

    private static int full(Frame frame, int stepX, int stepY) {
        int length = 0;
        for (int i = -70; i <= 70; i++) {
            int at = (80 + i * stepY) * 200 + 99 + i * stepX;
            length += frame.pixels()[at] >= frame.saturation() ? 1 : 0;
        }
        return length;
    }

    private static double above(Frame frame) {
        double sum = 0;
        for (float count : frame.pixels()) {
            sum += count - 100;
        }
        return sum;
    }

    @Test
    void blooming_movesChargeBothWays_andOffTheEnds() {
        Detector d = new Detector(8, 12, 3, 1, 0, 100, 16, 0, 0, true, AmpGlow.NONE, PixelFaults.NONE, 0);
        float[] electrons = new float[96];
        electrons[6 * 8 + 3] = 500;
        electrons[5] = 450;

        new Bleeding(d).spill(electrons);

        // 400 too many: 200 up and 200 down, two pixels each way.
        for (int row = 0; row < 12; row++) {
            assertThat(electrons[row * 8 + 3]).as("row %d", row).isEqualTo(Math.abs(row - 6) <= 2 ? 100f : 0f);
        }
        // At the top edge the upper half is lost; the lower fills 1.75 pixels.
        assertThat(electrons[5]).isEqualTo(100);
        assertThat(electrons[8 + 5]).isEqualTo(100);
        assertThat(electrons[16 + 5]).isEqualTo(75);
        assertThat(electrons[24 + 5]).isEqualTo(0);
    }

    @Test
    void faultyPixels_areTheSameInEveryFrame_andGrowWithTime() {
        PixelFaults faults = new PixelFaults(42, 1e-3, 300, 0);
        List<Integer> first = hot(frame(detector(50_000, 16, false, faults, 0), 1, 1));
        List<Integer> second = hot(frame(detector(50_000, 16, false, faults, 0), 1, 2));
        List<Integer> longer = hot(frame(detector(50_000, 16, false, faults, 0), 8, 3));
        List<Integer> otherDetector =
                hot(frame(detector(50_000, 16, false, new PixelFaults(43, 1e-3, 300, 0), 0), 1, 1));

        // 32 of 32,000 leak, median 300 in a second: nearly all exceed 20.
        assertThat(first).hasSizeBetween(24, 32);
        assertThat(second.stream().filter(first::contains).count()).isGreaterThanOrEqualTo(first.size() - 2L);
        assertThat(longer).containsAll(first);
        assertThat(otherDetector.stream().filter(first::contains).count()).isLessThan(2);
    }

    private static List<Integer> hot(Frame frame) {
        List<Integer> hot = new ArrayList<>();
        for (int i = 0; i < frame.pixels().length; i++) {
            boolean farFromPolaris = Math.hypot(i % 200 - 99.5, Math.floorDiv(i, 200) - 79.5) > 40;
            if (farFromPolaris && frame.pixels()[i] > 100 + 30) {
                hot.add(i);
            }
        }
        return hot;
    }

    @Test
    void cosmicRays_strikeAtTheGivenRate() {
        // 0.0415 cm² for a minute at 120 a cm² and minute: 4.98 a frame.
        StrayCharge rays = new StrayCharge(detector(50_000, 16, false, PixelFaults.NONE, 120));
        Random random = new Random(9);
        int tracks = 0;
        int frames = 400;
        for (int i = 0; i < frames; i++) {
            float[] electrons = new float[200 * 160];
            rays.addCosmicRays(electrons, 60, random);
            tracks += touching(electrons);
        }

        double expected = 120 * 200 * 160 * 3.6e-4 * 3.6e-4;
        // Some tracks touch others: a few per cent fewer groups than tracks.
        assertThat((double) tracks / frames).isBetween(expected * 0.9, expected * 1.02);
    }

    /** Number of groups of struck pixels; neighbours at a corner count as one group. */
    private static int touching(float[] electrons) {
        int groups = 0;
        boolean[] seen = new boolean[electrons.length];
        for (int i = 0; i < electrons.length; i++) {
            if (electrons[i] > 0 && !seen[i]) {
                groups++;
                List<Integer> open = new ArrayList<>(List.of(i));
                seen[i] = true;
                while (!open.isEmpty()) {
                    int at = open.remove(open.size() - 1);
                    for (int n = 0; n < 9; n++) {
                        int column = at % 200 + n % 3 - 1;
                        int row = at / 200 + n / 3 - 1;
                        int next = row * 200 + column;
                        if (column >= 0
                                && column < 200
                                && row >= 0
                                && row < 160
                                && electrons[next] > 0
                                && !seen[next]) {
                            seen[next] = true;
                            open.add(next);
                        }
                    }
                }
            }
        }
        return groups;
    }

    @Test
    void ampGlow_isInItsCorner() {
        Detector glowing =
                new Detector(200, 160, 3.6, 1, 3, 50_000, 16, 100, 2, false, new AmpGlow(500, 20), PixelFaults.NONE, 0);
        SimulatedCamera camera = SimulatedCamera.of("glow", CameraOptics.clean(4000, 10, 6), glowing);
        Exposure exposure = NIGHT.exposure(
                camera,
                CameraPath.standing(NIGHT.toward("Polaris", 0)),
                SkyConditions.EVEN.withSky(30),
                Duration.ofSeconds(3));

        float[] counts = Night.RENDERER.renderWithoutNoise(exposure).frame().pixels();

        assertThat(counts[160 * 200 - 1]).isCloseTo(100 + 3 * (2 + 500), within(0.1f));
        assertThat(counts[160 * 200 - 21]).isCloseTo((float) (100 + 3 * (2 + 500 / Math.E)), within(0.1f));
        assertThat(counts[0]).isCloseTo(106, within(0.1f));
    }
}
