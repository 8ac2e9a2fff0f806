package polewright.alignment.camera;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.attitude.RotationCovariance;
import polewright.sky.place.Site;

/** One more frame after the screws were turned. */
class ScrewProgressTest {
    private static final RotationCovariance GOOD = TurnedCamera.sigmas(1, 20);
    private static final double SKY_DEG_PER_SECOND = Math.toDegrees(TurnedCamera.SKY_RAD_PER_SECOND);
    private static final Angle LEVEL = Angle.ZERO;

    /** A wedge whose screws turn about this vertical and the hinge perpendicular to it. */
    private record Wedge(TurnedCamera camera, Vector3D vertical) {
        static Wedge level(TurnedCamera camera) {
            return new Wedge(camera, Vector3D.PLUS_K);
        }

        /** Raised about the hinge, then turned about the vertical. */
        Rotation screws(double azimuthDeg, double altitudeDeg) {
            Vector3D hinge = camera.axis().elevatedEnd().crossProduct(vertical).normalize();
            Rotation raised = new Rotation(hinge, Math.toRadians(altitudeDeg), RotationConvention.VECTOR_OPERATOR);
            Rotation swung = new Rotation(vertical, -Math.toRadians(azimuthDeg), RotationConvention.VECTOR_OPERATOR);
            return swung.applyTo(raised);
        }

        CameraAttitude frame(
                double azimuthDeg, double altitudeDeg, double westDeg, double seconds, RotationCovariance c) {
            return camera.frame(westDeg, seconds, c).turnedBy(screws(azimuthDeg, altitudeDeg));
        }

        AxisPointing axis(double azimuthDeg, double altitudeDeg) {
            return new AxisPointing(
                    screws(azimuthDeg, altitudeDeg).applyTo(camera.axis().elevatedEnd()));
        }
    }

    private static TurnedCamera camera(Site site, double polarDistanceDeg) {
        return TurnedCamera.of(site, AxisPointing.of(site, AxisOffset.ofArcminutes(90, -60)), polarDistanceDeg, 70);
    }

    private static AxisFromFrames reference(TurnedCamera camera, RotationCovariance c, Random random) {
        List<CameraAttitude> frames = new ArrayList<>();
        for (double west : new double[] {-60, -30, 0}) {
            frames.add(TurnedCamera.noisy(camera.frame(west, 60.0 * frames.size(), c), random));
        }
        return AxisFromFrames.of(camera.site(), frames);
    }

    private static AxisFromFrames exactReference(TurnedCamera camera) {
        return AxisFromFrames.of(
                camera.site(),
                List.of(camera.frame(-60, 0, GOOD), camera.frame(-30, 60, GOOD), camera.frame(0, 120, GOOD)));
    }

    static Stream<Long> seeds() {
        return IntStream.range(0, 40).mapToObj(i -> 900L + i);
    }

    /**
     * Both hemispheres, any field, tracking, stationary or turned by hand meanwhile: to a hundredth of an arcsecond.
     */
    @ParameterizedTest
    @MethodSource("seeds")
    void knownScrewTurns_areRecovered(long seed) {
        Random random = new Random(seed);
        Site site = Site.ofDegrees((seed % 2 == 0 ? 1 : -1) * (15 + 50 * random.nextDouble()), 0, 200);
        Wedge wedge = Wedge.level(camera(site, 5 + 80 * random.nextDouble()));
        double azimuth = 3 * random.nextGaussian();
        double altitude = 2 * random.nextGaussian();
        AxisFromFrames found = exactReference(wedge.camera());
        for (Drive drive : Drive.values()) {
            double west = drive == Drive.TRACKING ? 100 * SKY_DEG_PER_SECOND : 0;
            ScrewProgress soFar =
                    ScrewProgress.of(found, wedge.frame(azimuth, altitude, west, 220, GOOD), drive, LEVEL);
            assertThat(soFar.now()
                            .axis()
                            .separation(wedge.axis(azimuth, altitude))
                            .arcseconds())
                    .isLessThan(0.01);
            assertThat(soFar.azimuthMoved().degrees()).isCloseTo(azimuth, within(1e-5));
            assertThat(soFar.altitudeMoved().degrees()).isCloseTo(altitude, within(1e-5));
            assertThat(soFar.findings()).isEmpty();
        }
        ScrewProgress slipped =
                ScrewProgress.of(found, wedge.frame(azimuth, altitude, 5, 220, GOOD), Drive.STANDING, LEVEL);
        assertThat(slipped.now()
                        .axis()
                        .separation(wedge.axis(azimuth, altitude))
                        .arcseconds())
                .isLessThan(0.01);
        assertThat(slipped.findings()).hasSize(1);
        assertThat(((FrameFinding.RightAscensionTurned) slipped.findings().get(0))
                        .west()
                        .degrees())
                .isCloseTo(5, within(1e-5));
    }

    /** The region has its stated coverage, with the drive's own error and without. */
    @ParameterizedTest
    @CsvSource({
        "54.60, 60, TRACKING, 25",
        "-43.95, 60, TRACKING, 25",
        "54.60, 8, STANDING, 5",
        "-43.95, 40, STANDING, 5",
    })
    void region95_holds95Percent(double latitudeDeg, double polarDistance, Drive drive, double driveSigmaArcsec) {
        Site site = Site.ofDegrees(latitudeDeg, 0, 200);
        Wedge wedge = Wedge.level(camera(site, polarDistance));
        AxisPointing truth = wedge.axis(-1.2, 0.8);
        Random random = new Random(4);
        int trials = 3000;
        int held = 0;
        int slipped = 0;
        for (int i = 0; i < trials; i++) {
            AxisFromFrames found = reference(wedge.camera(), GOOD, random);
            double west = (drive == Drive.TRACKING ? 100 * SKY_DEG_PER_SECOND : 0)
                    + driveSigmaArcsec / 3600 * random.nextGaussian();
            CameraAttitude now = TurnedCamera.noisy(wedge.frame(-1.2, 0.8, west, 220, GOOD), random);
            ScrewProgress soFar = ScrewProgress.of(found, now, drive, LEVEL);
            held += soFar.now()
                                    .offsetCovariance(wedge.camera().site())
                                    .normalisedSquare(
                                            soFar.now().axis().offset(site).minus(truth.offset(site)))
                            < 5.991
                    ? 1
                    : 0;
            slipped += soFar.findings().isEmpty() ? 0 : 1;
        }
        assertThat(100.0 * held / trials).isBetween(94.0, 96.0);
        assertThat(slipped).isLessThan(trials / 100);
    }

    /**
     * Where the drive's rotation helps: it replaces a poor roll, except for a field on the prime vertical. The figures
     * are 1 sigma perpendicular to the line from the axis to the field, which roll alone gives as σ_r sin p.
     */
    @Test
    void driveRotation_replacesAPoorRoll_exceptOnThePrimeVertical() {
        RotationCovariance poorRoll = TurnedCamera.sigmas(1, 120);
        Site site = Site.ofDegrees(45, 0, 200);
        TurnedCamera camera = TurnedCamera.of(site, AxisPointing.atPole(site), 45, 0);
        Wedge wedge = Wedge.level(camera);
        // On the meridian south of the pole by 45 degrees: the zenith. Turned by a quarter: level with the pole.
        AxisFromFrames overhead = AxisFromFrames.of(
                site,
                List.of(
                        camera.frame(-60, 0, poorRoll),
                        camera.frame(60, 60, poorRoll),
                        camera.frame(0, 120, poorRoll)));
        ScrewProgress zenith = ScrewProgress.of(overhead, wedge.frame(0, 0, 0, 180, poorRoll), Drive.STANDING, LEVEL);
        AxisFromFrames aside = AxisFromFrames.of(
                site,
                List.of(
                        camera.frame(-30, 0, poorRoll),
                        camera.frame(90, 60, poorRoll),
                        camera.frame(180, 120, poorRoll)));
        ScrewProgress northHorizon =
                ScrewProgress.of(aside, wedge.frame(0, 0, 180, 180, poorRoll), Drive.STANDING, LEVEL);
        assertThat(zenith.now().offsetCovariance(site).largestSigma().arcseconds())
                // The frame's own roll, plus a third as much from those that located the axis in the picture.
                .isCloseTo(120 * Math.sin(Math.toRadians(45)) * Math.sqrt(4 / 3.0), within(0.5));
        assertThat(northHorizon.now().offsetCovariance(site).largestSigma().arcseconds())
                .isLessThan(4);
    }

    @Test
    void fieldNearThePole_needsNeitherRollNorDrive() {
        RotationCovariance poorRoll = TurnedCamera.sigmas(1, 120);
        Wedge wedge = Wedge.level(camera(Site.ofDegrees(54.6, 0, 200), 0.3));
        AxisFromFrames found = reference(wedge.camera(), poorRoll, new Random(1));
        CameraAttitude now = TurnedCamera.noisy(wedge.frame(-1, 0.5, 3, 220, poorRoll), new Random(2));
        ScrewProgress soFar = ScrewProgress.of(found, now, Drive.NOT_TOLD, LEVEL);
        assertThat(soFar.now().axis().separation(wedge.axis(-1, 0.5)).arcseconds())
                .isLessThan(5);
        assertThat(soFar.now()
                        .offsetCovariance(wedge.camera().site())
                        .largestSigma()
                        .arcseconds())
                .isLessThan(2);
    }

    /**
     * A base that is tilted by a degree and a half turns the mount about its axis; with a suitable level sigma it does
     * no harm.
     */
    @Test
    void tiltedBase_isAllowedFor() {
        Site site = Site.ofDegrees(-43.95, 0, 200);
        double lean = Math.toRadians(1.5);
        Wedge wedge = new Wedge(camera(site, 60), new Vector3D(lean, lean, 1).normalize());
        AxisFromFrames found = exactReference(wedge.camera());
        ScrewProgress soFar =
                ScrewProgress.of(found, wedge.frame(3, -1, 0, 220, GOOD), Drive.STANDING, Angle.ofDegrees(1.5));
        assertThat(soFar.findings()).isEmpty();
        double miss = soFar.now()
                .offsetCovariance(wedge.camera().site())
                .normalisedSquare(
                        soFar.now().axis().offset(site).minus(wedge.axis(3, -1).offset(site)));
        assertThat(miss).isLessThan(4);
    }

    /** Bases tilted by as much as their level sigma, in any direction, with large turns: no false alarm. */
    @ParameterizedTest
    @MethodSource("seeds")
    void tiltedBase_isNotMistakenForATurnInRightAscension(long seed) {
        Random random = new Random(seed);
        Site site = Site.ofDegrees((seed % 2 == 0 ? 1 : -1) * (20 + 45 * random.nextDouble()), 0, 200);
        double sigma = Math.toRadians(1.5);
        Wedge wedge = new Wedge(
                camera(site, 1 + 60 * random.nextDouble()),
                new Vector3D(sigma * random.nextGaussian(), sigma * random.nextGaussian(), 1).normalize());
        CameraAttitude now =
                wedge.frame(4 * random.nextGaussian(), 4 * random.nextGaussian(), 0, 220, TurnedCamera.sigmas(1, 5));
        ScrewProgress soFar =
                ScrewProgress.of(exactReference(wedge.camera()), now, Drive.STANDING, Angle.ofDegrees(1.5));
        assertThat(soFar.findings()).noneMatch(f -> f instanceof FrameFinding.RightAscensionTurned);
    }

    @Test
    void axisMovedBeyondTheRangeOfTheScrews_isReported() {
        Wedge wedge = Wedge.level(camera(Site.ofDegrees(54.6, 0, 200), 60));
        ScrewProgress soFar = ScrewProgress.of(
                exactReference(wedge.camera()), wedge.frame(0, 14, 0, 220, GOOD), Drive.STANDING, LEVEL);
        assertThat(soFar.findings()).hasSize(1);
        assertThat(((FrameFinding.MovedTooFar) soFar.findings().get(0))
                        .distance()
                        .degrees())
                .isCloseTo(14, within(1e-4));
    }

    @Test
    void frameOfTheSameTime_isRefused() {
        Wedge wedge = Wedge.level(camera(Site.ofDegrees(54.6, 0, 200), 60));
        AxisFromFrames found = exactReference(wedge.camera());
        assertThatThrownBy(() -> ScrewProgress.of(found, wedge.frame(0, 1, 0, 120, GOOD), Drive.STANDING, LEVEL))
                .isInstanceOf(InputRefused.class)
                .hasMessage("the frame has the same time as the last of those that gave the axis. Give each frame its"
                        + " own time of exposure.");
    }

    @Test
    void frameOfAnotherTime_isRefused() {
        Wedge wedge = Wedge.level(camera(Site.ofDegrees(54.6, 0, 200), 60));
        AxisFromFrames found = exactReference(wedge.camera());
        assertThatThrownBy(() -> ScrewProgress.of(found, wedge.frame(0, 0, 0, 60, GOOD), Drive.STANDING, LEVEL))
                .isInstanceOf(InputRefused.class)
                .hasMessage("the frame was taken 1 minutes before those that gave the axis. Find the axis again: two"
                        + " frames with right ascension turned between them.");
    }
}
