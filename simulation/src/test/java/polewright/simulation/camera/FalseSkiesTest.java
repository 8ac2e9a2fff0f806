package polewright.simulation.camera;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.image.Frame;
import polewright.sky.angle.Angle;
import polewright.sky.place.CatalogueStar;

/** Frames of dots, and stars that are in no catalogue. */
class FalseSkiesTest {
    private static final Night NIGHT = Night.LARKFELL;

    private static Frame dots(int count, int seed) {
        return FrameOfDots.scattered(
                Night.wideCamera(), SkyConditions.EVEN, NIGHT.at(), Duration.ofSeconds(2), count, new Random(seed));
    }

    /** Pixels above all their neighbours and far above the noise. */
    private static List<Integer> peaks(Frame frame) {
        float[] sorted = frame.pixels().clone();
        Arrays.sort(sorted);
        float sky = sorted[sorted.length / 2];
        // Two sigmas down: one alone is too coarse in whole counts.
        float sigma = (sky - sorted[(int) (sorted.length * 0.02275)]) / 2;
        List<Integer> peaks = new ArrayList<>();
        int width = frame.width();
        for (int i = width + 1; i < frame.pixels().length - width - 1; i++) {
            float here = frame.pixels()[i];
            boolean highest = here > sky + 7 * sigma;
            for (int step : new int[] {-width - 1, -width, -width + 1, -1}) {
                highest &= here > frame.pixels()[i + step] && here >= frame.pixels()[i - step];
            }
            if (highest) {
                peaks.add(i);
            }
        }
        return peaks;
    }

    @Test
    void dots_haveTheRequestedNumber_andDifferBetweenFrames() {
        List<Integer> one = peaks(dots(80, 1));
        List<Integer> other = peaks(dots(80, 2));

        // A few may touch or lie at the very edge; the flat top of a saturated one may count twice.
        assertThat(one).hasSizeBetween(72, 84);
        assertThat(other).hasSizeBetween(72, 84);
        assertThat(other.stream().filter(one::contains).count()).isLessThan(3);
        assertThat(dots(80, 1).pixels()).isEqualTo(dots(80, 1).pixels());
    }

    @Test
    void frameWithoutDots_isBlank() {
        assertThat(peaks(dots(0, 1))).isEmpty();
        assertThat(dots(0, 1).facts().focalLengthMm()).hasValue(20);
    }

    @Test
    void shuffledSky_hasTheSameLightElsewhere() {
        Exposure exposure = NIGHT.tracked(Night.wideCamera(), NIGHT.toward("Polaris", 0), 2);
        RenderedFrame real = Night.RENDERER.render(exposure, new Random(1));

        Frame shuffled = FrameOfDots.shuffled(exposure, real.truth(), new Random(2));

        assertThat((double) peaks(shuffled).size() / peaks(real.frame()).size()).isBetween(0.7, 1.3);
        assertThat(peaks(shuffled).stream()
                        .filter(peaks(real.frame())::contains)
                        .count())
                .isLessThan(peaks(shuffled).size() / 20 + 2L);
    }

    private static List<CatalogueStar> invented(double raDeg, double decDeg, double radiusDeg, double faintest) {
        List<CatalogueStar> stars = new ArrayList<>();
        FaintStars.visit(
                CatalogueStar.fixed(Angle.ofDegrees(raDeg), Angle.ofDegrees(decDeg)),
                Angle.ofDegrees(radiusDeg),
                faintest,
                (star, magnitude) -> {
                    assertThat(magnitude).isBetween(12.2, faintest);
                    stars.add(star);
                });
        return stars;
    }

    @ParameterizedTest
    @ValueSource(doubles = {-90, -40, 0, 89.9})
    void inventedStars_areTheSameForEveryPointing(double decDeg) {
        List<CatalogueStar> here = invented(359.8, decDeg, 0.4, 14);
        List<CatalogueStar> wider = invented(0.1, decDeg, 2, 15);

        assertThat(here).isNotEmpty();
        assertThat(wider).containsAll(here);
        assertThat(wider.size()).isGreaterThan(3 * here.size());
    }

    @Test
    void inventedStars_areAsManyAsReal_andMoreInTheMilkyWay() {
        // 60 a square degree to V 12, 2.4 times as many each magnitude: 60 · (10^0.76 − 10^0.076) to V 14.
        double average = 60 * (Math.pow(10, 0.76) - Math.pow(10, 0.076));
        double atPole = invented(192.86, 27.13, 3, 14).size() / (Math.PI * 9);
        double inMilkyWay = invented(266.4, -28.9, 3, 14).size() / (Math.PI * 9);

        // The search extends half a cell too far: up to 15 % more than the circle holds.
        assertThat(atPole / average).isBetween(0.45, 0.65);
        assertThat(inMilkyWay / average).isBetween(2.2, 3.4);
    }

    @Test
    void inventedStars_showInALongExposure_andAreMarked() {
        Exposure exposure = NIGHT.tracked(Night.smallCamera(), NIGHT.toward("Deneb", 0), 60);
        RenderedFrame plain = Night.RENDERER.renderWithoutNoise(exposure);
        RenderedFrame deep = Night.RENDERER.withInventedStarsTo(17).renderWithoutNoise(exposure);

        assertThat(plain.truth().stars()).isEqualTo(plain.truth().starsOfAtlas());
        assertThat(deep.truth().starsOfAtlas()).isEqualTo(plain.truth().stars());
        assertThat(deep.truth().stars().size())
                .isGreaterThan(3 * plain.truth().stars().size());
        assertThat(deep.truth().stars()).isSortedAccordingTo(Comparator.comparingDouble(TrueStar::magnitude));
    }
}
