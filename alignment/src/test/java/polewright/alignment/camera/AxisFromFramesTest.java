package polewright.alignment.camera;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.alignment.sighting.SkySetting;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.attitude.RotationCovariance;
import polewright.sky.place.Site;

/** Noise-free frames give the axis exactly; unusable sets of frames are refused. */
class AxisFromFramesTest {
    private static final RotationCovariance GOOD = TurnedCamera.sigmas(1, 30);

    private static double figure(ArgumentsAccessor row, int column) {
        return Objects.requireNonNull(row.getDouble(column));
    }

    private static CameraAttitude frame(ArgumentsAccessor row, int frame) {
        int x = 2 + 4 * frame;
        return new CameraAttitude(
                SkySetting.EVENING.plusSeconds(90L * frame),
                figure(row, x),
                figure(row, x + 1),
                figure(row, x + 2),
                figure(row, x + 3),
                GOOD);
    }

    /** The project's reference table, made by an independent library; its quaternions have twelve decimals. */
    @ParameterizedTest
    @CsvFileSource(resources = "/authorities/attitude/attitude_public.csv", numLinesToSkip = 1)
    void axisOfTheReferenceTable_isFoundFromTwoAndThreeFrames(ArgumentsAccessor row) {
        Site site = Site.ofDegrees(figure(row, 1), 0, 0);
        AxisPointing expected = AxisPointing.of(Angle.ofDegrees(figure(row, 14)), Angle.ofDegrees(figure(row, 15)));
        for (int[] chosen : new int[][] {{0, 1}, {1, 2}, {0, 2}, {0, 1, 2}}) {
            AxisFromFrames found = AxisFromFrames.of(
                    site, IntStream.of(chosen).mapToObj(i -> frame(row, i)).toList());
            assertThat(found.axis().separation(expected).arcseconds()).isLessThan(0.01);
            assertThat(found.boresightPolarDistance().degrees()).isCloseTo(figure(row, 18), within(1e-6));
            double stepDeg = figure(row, 19) * (chosen[chosen.length - 1] - chosen[0]);
            assertThat(found.largestTurn().degrees()).isCloseTo(stepDeg, within(1e-6));
            assertThat(found.chiSquared()).isLessThan(1e-6);
        }
    }

    static Stream<Long> seeds() {
        return IntStream.range(0, 60).mapToObj(i -> 7_000L + i);
    }

    /** First offsets reach 15 degrees and more; any latitude, any field, any turn, both hemispheres. */
    @ParameterizedTest
    @MethodSource("seeds")
    void axis_isExact_atAnyOffset(long seed) {
        Random random = new Random(seed);
        Site site = Site.ofDegrees((random.nextBoolean() ? 1 : -1) * 84 * random.nextDouble(), 0, 0);
        AxisPointing axis = AxisPointing.of(
                site, AxisOffset.ofArcminutes(1200 * random.nextGaussian() / 2, 1200 * random.nextGaussian() / 2));
        TurnedCamera camera = TurnedCamera.of(site, axis, 120 * random.nextDouble(), 360 * random.nextDouble());
        double west = 360 * random.nextDouble();
        double turn = 5 + 350 * random.nextDouble();
        AxisFromFrames found = AxisFromFrames.of(
                site,
                List.of(
                        camera.frame(west, 0, GOOD),
                        camera.frame(west + turn, 60, GOOD),
                        camera.frame(west + turn / 3, 140, GOOD)));
        assertThat(found.axis().separation(axis).arcseconds()).isLessThan(1e-4);
        assertThat(found.inCamera().distance(camera.inCamera())).isLessThan(1e-9);
        assertThat(found.residuals()).allSatisfy(r -> assertThat(r.arcseconds()).isLessThan(1e-4));
        assertThat(found.turnsWest()
                        .get(1)
                        .minus(Angle.ofDegrees(turn))
                        .wrappedSigned()
                        .arcseconds())
                .isCloseTo(0, within(1e-4));
        assertThat(found.offset().minus(axis.offset(site)).distance().arcseconds())
                .isLessThan(1e-4);
    }

    /** Near the equator the elevated end may be below the horizon. */
    @ParameterizedTest
    @CsvSource({"2, -5", "-2, -5", "0, -3", "1, 12"})
    void elevatedEnd_isTowardThePole_evenBelowTheHorizon(double latitudeDeg, double upDeg) {
        Site site = Site.ofDegrees(latitudeDeg, 0, 0);
        AxisPointing axis = AxisPointing.of(site, AxisOffset.ofArcminutes(0, 60 * upDeg));
        TurnedCamera camera = TurnedCamera.of(site, axis, 60, 10);
        AxisFromFrames found = AxisFromFrames.of(site, List.of(camera.frame(0, 0, GOOD), camera.frame(-60, 60, GOOD)));
        assertThat(found.axis().separation(axis).arcseconds()).isLessThan(1e-4);
    }

    @Test
    void orderOfFrames_doesNotMatter() {
        TurnedCamera camera = TurnedCamera.of(
                SkySetting.LARKFELL, AxisPointing.of(SkySetting.LARKFELL, AxisOffset.ofArcminutes(30, -20)), 40, 70);
        Random random = new Random(3);
        CameraAttitude a = TurnedCamera.noisy(camera.frame(0, 0, GOOD), random);
        CameraAttitude b = TurnedCamera.noisy(camera.frame(30, 60, GOOD), random);
        CameraAttitude c = TurnedCamera.noisy(camera.frame(60, 120, GOOD), random);
        AxisFromFrames inOrder = AxisFromFrames.of(SkySetting.LARKFELL, List.of(a, b, c));
        AxisFromFrames shuffled = AxisFromFrames.of(SkySetting.LARKFELL, List.of(c, a, b));
        assertThat(shuffled.frames()).isEqualTo(inOrder.frames());
        assertThat(shuffled.axis()).isEqualTo(inOrder.axis());
    }

    @Test
    void oneFrame_isRefused() {
        TurnedCamera camera = camera();
        assertThatThrownBy(() -> AxisFromFrames.of(SkySetting.LARKFELL, List.of(camera.frame(0, 0, GOOD))))
                .isInstanceOf(InputRefused.class)
                .hasMessage("one frame alone does not give the axis. Turn right ascension by 30 to 90 degrees, nothing"
                        + " else, and take another.");
    }

    @Test
    void framesWithoutRotationBetweenThem_areRefused() {
        TurnedCamera camera = camera();
        assertThatThrownBy(() -> AxisFromFrames.of(
                        SkySetting.LARKFELL,
                        List.of(camera.frame(0, 0, GOOD), camera.frame(0.25, 60, GOOD), camera.frame(0.5, 120, GOOD))))
                .isInstanceOf(InputRefused.class)
                .hasMessage("there is no rotation between the frames (0.5 degrees). Turn right ascension by 30 to 90"
                        + " degrees between them.");
    }

    @Test
    void framesOfTwoNights_areRefused() {
        TurnedCamera camera = camera();
        double nextNight = Duration.ofHours(23).toSeconds();
        assertThatThrownBy(() -> AxisFromFrames.of(
                        SkySetting.LARKFELL, List.of(camera.frame(0, 0, GOOD), camera.frame(60, nextNight, GOOD))))
                .isInstanceOf(InputRefused.class)
                .hasMessage("two frames are 23 hours apart (2026-11-25T20:00:00Z and 2026-11-26T19:00:00Z). Give"
                        + " frames of one night, with only right ascension turned between them.");
    }

    @Test
    void framesOfOneTime_areRefused() {
        TurnedCamera camera = camera();
        assertThatThrownBy(() -> AxisFromFrames.of(
                        SkySetting.LARKFELL, List.of(camera.frame(0, 0, GOOD), camera.frame(60, 0, GOOD))))
                .isInstanceOf(InputRefused.class)
                .hasMessage("two frames have the same time, 2026-11-25T20:00:00Z. Give each frame its own time of"
                        + " exposure.");
    }

    @Test
    void tooManyFrames_areRefused() {
        TurnedCamera camera = camera();
        List<CameraAttitude> many = IntStream.range(0, 51)
                .mapToObj(i -> camera.frame(i, 10 * i, GOOD))
                .toList();
        assertThatThrownBy(() -> AxisFromFrames.of(SkySetting.LARKFELL, many))
                .isInstanceOf(InputRefused.class)
                .hasMessage("51 frames are more than 50. Use three or four, far apart.");
        assertThat(AxisFromFrames.of(SkySetting.LARKFELL, many.subList(0, 50)).frames())
                .hasSize(50);
    }

    private static TurnedCamera camera() {
        return TurnedCamera.of(
                SkySetting.LARKFELL, AxisPointing.of(SkySetting.LARKFELL, AxisOffset.ofArcminutes(30, -20)), 40, 70);
    }

    @Test
    void stationaryAndTrackingMount_giveTheSameAxis() {
        TurnedCamera camera = camera();
        // Tracking adds diurnal rotation between frames to the turn by hand.
        double sky = Math.toDegrees(TurnedCamera.SKY_RAD_PER_SECOND * 300);
        AxisFromFrames tracking = AxisFromFrames.of(
                SkySetting.LARKFELL, List.of(camera.frame(0, 0, GOOD), camera.frame(40 + sky, 300, GOOD)));
        AxisFromFrames standing =
                AxisFromFrames.of(SkySetting.LARKFELL, List.of(camera.frame(0, 0, GOOD), camera.frame(40, 300, GOOD)));
        assertThat(tracking.axis().separation(standing.axis()).arcseconds()).isLessThan(1e-4);
    }
}
