package polewright.simulation.camera;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.image.Frame;
import polewright.image.FrameFacts;
import polewright.sky.angle.Angle;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.RefractedDirection;

class TrailsTest {
    private static final Night NORTH = Night.LARKFELL.airless();
    private static final Night SOUTH = Night.TUSSOCK_FLAT.airless();

    private static Exposure standing(Night night, Rotation toward, double seconds) {
        return night.exposure(
                Night.smallCamera(),
                CameraPath.standing(toward),
                SkyConditions.EVEN,
                Duration.ofNanos(Math.round(seconds * 1e9)));
    }

    @ParameterizedTest
    @CsvSource({
        "Polaris, 60, true",
        "Deneb, 5, true",
        "Altair, 5, true",
        "sigma octantis, 60, false",
        "Antares, 5, false"
    })
    void driveOff_trailIsAsLongAsTheSkyTurns(String name, double seconds, boolean northern) {
        Night night = northern ? NORTH : SOUTH;
        Exposure exposure = standing(night, night.toward(name, 40), seconds);
        RenderedFrame picture = Night.RENDERER.renderWithoutNoise(exposure);

        TrueStar star = picture.truth().stars().get(0);

        double declination = SkyView.of(exposure, 0)
                .moment()
                .apparent(picture.truth().centre())
                .declination()
                .radians();
        double scale = Math.toDegrees(Math.atan(3.6e-3 / 500)) * 3600;
        double expected = 15.041067 * Math.cos(declination) * seconds / scale;
        assertThat(star.trailPixels()).isCloseTo(expected, within(expected * 2e-4 + 1e-3));
        assertThat((star.startX() + star.endX()) / 2).isCloseTo(star.x(), within(0.3));
    }

    @ParameterizedTest
    @CsvSource({"Deneb, 60, true", "Antares, 60, false"})
    void perfectTracking_starsArePoints(String name, double seconds, boolean northern) {
        Night night = northern ? NORTH : SOUTH;
        RenderedFrame picture =
                Night.RENDERER.renderWithoutNoise(night.tracked(Night.smallCamera(), night.toward(name, 40), seconds));

        assertThat(picture.truth().stars().get(0).trailPixels()).isLessThan(0.02);
    }

    @Test
    void trail_keepsItsLightCentroidAndLength() {
        RenderedFrame picture = Night.RENDERER.renderWithoutNoise(standing(NORTH, NORTH.toward("Deneb", 0), 4));
        TrueStar star = picture.truth().stars().get(0);
        double sky = Night.sky(picture.frame());

        Night.Blob blob = Night.blob(picture.frame(), star.x(), star.y(), 45, sky);
        double spread = 0;
        for (int column = 175; column <= 265; column++) {
            for (int row = 135; row <= 225; row++) {
                double light = picture.frame().pixels()[row * 440 + column] - sky;
                spread += light * (column - blob.x()) * (column - blob.x());
            }
        }

        assertThat(blob.sum()).isCloseTo(star.electrons(), within(star.electrons() * 1e-3));
        assertThat(blob.x()).isCloseTo(star.x(), within(0.02));
        assertThat(blob.y()).isCloseTo(star.y(), within(0.02));
        // A line of length L blurred by sigma and sampled by pixels: variance L²/12 + sigma² + 1/12. Sigma 1.009
        // pixels.
        double variance = Math.pow(star.endX() - star.startX(), 2) / 12 + 1.009 * 1.009 + 1 / 12.0;
        assertThat(spread / blob.sum()).isCloseTo(variance, within(variance * 0.01));
    }

    @ParameterizedTest
    @CsvSource({"true, -1", "false, 1"})
    void aroundThePole_starsTurnAnticlockwiseInTheNorthClockwiseInTheSouth(boolean northern, int sense) {
        // Common practice: to an observer facing it, the sky turns anticlockwise about the north pole.
        Night night = northern ? NORTH : SOUTH;
        Rotation atPole = CameraAim.at(
                RefractedDirection.of(night.site().poleAzimuth(), night.site().poleAltitude()), Angle.ZERO);
        Exposure exposure = night.exposure(
                Night.wideCamera(), CameraPath.standing(atPole), SkyConditions.EVEN, Duration.ofMinutes(10));

        RenderedFrame picture = Night.RENDERER.renderWithoutNoise(exposure);

        for (TrueStar star : picture.truth().stars().subList(0, 20)) {
            double turned = Math.atan2(star.endY() - 239.5, star.endX() - 299.5)
                    - Math.atan2(star.startY() - 239.5, star.startX() - 299.5);
            // Rows count downward: clockwise as seen is positive.
            double degrees = Math.toDegrees(Math.IEEEremainder(turned, 2 * Math.PI));
            assertThat(degrees).isCloseTo(sense * 10 * 60 * 15.041067 / 3600, within(0.01));
        }
    }

    @Test
    void longTrailNearThePole_isCurved_withItsMiddleOnTheArc() {
        Rotation atPole = CameraAim.at(
                RefractedDirection.of(NORTH.site().poleAzimuth(), NORTH.site().poleAltitude()), Angle.ZERO);
        Exposure exposure = NORTH.exposure(
                Night.wideCamera(), CameraPath.standing(atPole), SkyConditions.EVEN, Duration.ofMinutes(40));

        RenderedFrame picture = Night.RENDERER.renderWithoutNoise(exposure);

        TrueStar star = picture.truth().stars().stream()
                .filter(s -> Math.hypot(s.x() - 299.5, s.y() - 239.5) > 150
                        && Math.hypot(s.x() - 299.5, s.y() - 239.5) < 190)
                .findFirst()
                .orElseThrow();
        double radius = Math.hypot(star.x() - 299.5, star.y() - 239.5);
        double chordMiddle =
                Math.hypot((star.startX() + star.endX()) / 2 - 299.5, (star.startY() + star.endY()) / 2 - 239.5);
        double half = Math.toRadians(20 * 60 * 15.041067 / 3600);
        assertThat(chordMiddle / radius).isCloseTo(Math.cos(half), within(2e-5));
    }

    @Test
    void light_followsTheArcNotTheChord() {
        double radius = 170;
        double half = 0.1;
        double[] xs = new double[3];
        double[] ys = new double[3];
        for (int i = 0; i < 3; i++) {
            xs[i] = 200 + radius * Math.sin((i - 1) * half);
            ys[i] = 10 + radius * Math.cos((i - 1) * half);
        }
        float[] light = new float[400 * 300];
        new StarPainter(Detector.flawless(400, 300, 3), light, 2.5, 0).paint(new StarImage(1, 5, 1e5, xs, ys));
        Frame frame = new Frame(400, 300, light, Float.POSITIVE_INFINITY, FrameFacts.NONE);

        Night.Blob blob = Night.blob(frame, 200, 180, 40, 0);

        // Centroid of an arc.
        assertThat(blob.y() - 10).isCloseTo(radius * Math.sin(half) / half, within(2e-3));
        assertThat(blob.x()).isCloseTo(200, within(1e-4));
        assertThat(blob.sum()).isCloseTo(1e5, within(20.0));
    }

    @Test
    void misalignedAxis_driftsByTheFormula() {
        // Computed outside this project: on the upper meridian, axis east of the pole, north site: drift south at
        // 0.2625″ a minute per arcminute.
        Night night = NORTH;
        CatalogueStar onMeridian = CatalogueStar.fixed(night.moment().siderealTime(), Angle.ofDegrees(20));
        Vector3D axis = night.northPole()
                .add(new Vector3D(Math.toRadians(0.5), Vector3D.PLUS_I))
                .normalize();
        Exposure exposure = night.exposure(
                Night.smallCamera(),
                CameraPath.tracking(night.toward(onMeridian, 0), axis),
                SkyConditions.EVEN,
                Duration.ofMinutes(4));
        SkyView before = SkyView.of(exposure, -120);
        SkyView after = SkyView.of(exposure, 120);

        double down = after.pixelOf(onMeridian).orElseThrow().getY()
                - before.pixelOf(onMeridian).orElseThrow().getY();

        double scale = Math.toDegrees(Math.atan(3.6e-3 / 500)) * 3600;
        assertThat(down * scale).isCloseTo(0.26252 * 30 * 4, within(0.1));
    }
}
