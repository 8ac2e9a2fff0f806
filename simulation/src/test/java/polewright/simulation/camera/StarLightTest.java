package polewright.simulation.camera;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.image.Frame;
import polewright.sky.angle.Angle;

class StarLightTest {
    private static final Night NIGHT = Night.LARKFELL;

    @Test
    void star_givesTheElectronsOfTheZeroPoint() {
        SimulatedCamera camera = Night.smallCamera();
        RenderedFrame picture = Night.RENDERER.renderWithoutNoise(NIGHT.tracked(camera, NIGHT.toward("Polaris", 0), 2));

        TrueStar star = picture.truth().stars().get(0);
        double counts = Night.blob(picture.frame(), star.x(), star.y(), 30, Night.sky(picture.frame()))
                .sum();

        // 1000 photons per second, cm² and Å from V = 0, over 3000 Å, half of them detected (common practice).
        double electrons = Math.PI * 3 * 3 * 1000 * 3000 * 0.5 * Math.pow(10, -0.4 * star.magnitude()) * 2;
        assertThat(star.magnitude()).isCloseTo(2.0, within(0.05));
        assertThat(star.electrons()).isCloseTo(electrons, within(electrons * 1e-9));
        assertThat(counts).isCloseTo(electrons, within(electrons * 1e-3));
    }

    @Test
    void noisyStar_givesTheSameWithinItsNoise() {
        SimulatedCamera camera = Night.smallCamera();
        // Short enough for the star not to saturate a pixel.
        Exposure exposure = NIGHT.tracked(camera, NIGHT.toward("Polaris", 0), 0.02);
        TrueStar star =
                Night.RENDERER.renderWithoutNoise(exposure).truth().stars().get(0);
        int half = 8;
        int pixels = (2 * half + 1) * (2 * half + 1);
        double sigma = Math.sqrt(star.electrons() + pixels * 9.0);
        int frames = 40;
        double sum = 0;
        for (int seed = 0; seed < frames; seed++) {
            Frame frame = Night.RENDERER.render(exposure, new Random(seed)).frame();
            sum += Night.blob(frame, star.x(), star.y(), half, 500).sum();
        }

        assertThat(sum / frames)
                .isCloseTo(star.electrons(), within(4 * sigma / Math.sqrt(frames) + star.electrons() * 1e-4));
    }

    @Test
    void gain_dividesCounts() {
        SimulatedCamera camera = Night.smallCamera();
        Detector d = camera.detector();
        Detector halved = new Detector(
                d.width(),
                d.height(),
                d.pixelMicrons(),
                2,
                3,
                50_000,
                16,
                500,
                0,
                false,
                AmpGlow.NONE,
                PixelFaults.NONE,
                0);
        Exposure one = NIGHT.tracked(camera, NIGHT.toward("Polaris", 0), 1);
        Exposure two = NIGHT.tracked(camera.with(halved), NIGHT.toward("Polaris", 0), 1);

        float[] counts = Night.RENDERER.renderWithoutNoise(one).frame().pixels();
        float[] halvedCounts = Night.RENDERER.renderWithoutNoise(two).frame().pixels();

        for (int i = 0; i < counts.length; i++) {
            assertThat(halvedCounts[i] - 500).isCloseTo((counts[i] - 500) / 2, within(1e-2f));
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.1, 0.4})
    void halo_takesItsLightFromTheCore(double share) {
        CameraOptics optics = new CameraOptics(500, 60, 6, share, 0, Distortion.NONE, false);
        RenderedFrame picture = Night.RENDERER.renderWithoutNoise(
                NIGHT.tracked(Night.smallCamera().with(optics), NIGHT.toward("Polaris", 0), 1));
        TrueStar star = picture.truth().stars().get(0);
        double sky = Night.sky(picture.frame());

        double all = Night.blob(picture.frame(), star.x(), star.y(), 40, sky).sum();
        double peak = picture.frame().pixels()[180 * 440 + 220] - sky;

        assertThat(all).isCloseTo(star.electrons(), within(star.electrons() * 1e-3));
        // A core of 2.5″ ⊕ 6 µm at 3.6 µm and 1.485″ a pixel has a sigma of 1.009 pixels.
        double core = star.electrons() / (2 * Math.PI * 1.009 * 1.009);
        assertThat(peak / core).isBetween(0.7 * (1 - share), 1 - share + share / 6);
    }

    @ParameterizedTest
    @CsvSource({"90, 1.000", "60, 1.154", "30, 1.994", "10, 5.59", "0, 37.92"})
    void extinction_followsTheAirMass(double altitudeDeg, double airmass) {
        // Secant of the zenith distance high up (geometry); lower, Kasten & Young (1989), by the formula in pvlib,
        // pvlib/atmosphere.py, 6382338a7598.
        SkyConditions sky = SkyConditions.COUNTRY;

        assertThat(sky.extinction(Angle.ofDegrees(altitudeDeg)))
                .isCloseTo(0.25 * airmass, within(0.25 * airmass * 0.005));
    }

    @Test
    void vignetting_dimsTheCornersByItsShare() {
        CameraOptics optics = new CameraOptics(500, 60, 6, 0, 0.4, Distortion.NONE, false);
        SkyConditions bright = SkyConditions.EVEN.withSky(15);
        Exposure exposure = new Exposure(
                Night.smallCamera().with(optics),
                CameraPath.standing(NIGHT.toward("Polaris", 0)),
                NIGHT.site(),
                NIGHT.weather(),
                bright,
                NIGHT.at(),
                Duration.ofSeconds(1));

        Frame frame = Night.RENDERER.renderWithoutNoise(exposure).frame();

        double corner = frame.pixels()[0] - 500;
        double side = frame.pixels()[frame.width() * 100 + frame.width() / 2] - 500;
        double distance = (179.5 - 100) / Math.hypot(220, 180);
        assertThat(corner / side).isCloseTo((1 - 0.4) / (1 - 0.4 * distance * distance), within(0.005));
    }

    @Test
    void background_hasTheGivenBrightness() {
        Exposure exposure = NIGHT.tracked(Night.smallCamera(), NIGHT.toward("Polaris", 0), 10);

        Frame frame = Night.RENDERER.renderWithoutNoise(exposure).frame();

        double scale = Math.toDegrees(Math.atan(3.6e-3 / 500)) * 3600;
        double electrons = Math.PI * 9 * 1.5e6 * Math.pow(10, -0.4 * 21.5) * scale * scale * 10;
        assertThat(Night.sky(frame) - 500).isCloseTo(electrons, within(electrons * 1e-3));
    }
}
