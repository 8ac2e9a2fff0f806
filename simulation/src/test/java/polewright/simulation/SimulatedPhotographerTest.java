package polewright.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.simulation.camera.CameraOptics;
import polewright.simulation.camera.Detector;
import polewright.simulation.camera.FrameRenderer;
import polewright.simulation.camera.RenderedFrame;
import polewright.simulation.camera.SimulatedCamera;
import polewright.simulation.camera.SkyConditions;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

class SimulatedPhotographerTest {
    private static final Instant NOW = Instant.parse("2026-10-14T21:00:00Z");
    private static final Duration EXPOSURE = Duration.ofSeconds(4);

    private static SimulatedPhotographer photographer(Site site) {
        SimulatedCamera camera =
                SimulatedCamera.of("test", CameraOptics.clean(200, 50, 5), Detector.flawless(320, 240, 6));
        return new SimulatedPhotographer(
                new FrameRenderer(StarAtlas.bundled()), camera, site, Weather.standardAt(0), SkyConditions.EVEN);
    }

    private static SimulatedFork fork(Site site, Drive drive) {
        AxisPointing axis = AxisPointing.of(site, AxisOffset.ofArcminutes(30, -20));
        return new SimulatedFork(
                axis.northernEnd(site),
                Vector3D.PLUS_K,
                new TubeOnFork(Angle.ofArcminutes(15), Angle.ZERO, Angle.ofDegrees(70), Angle.ZERO),
                Angle.ofDegrees(-40),
                Angle.ofDegrees(80 * site.hemisphereSign()),
                drive,
                NOW);
    }

    @ParameterizedTest
    @ValueSource(doubles = {54.6, -43.95})
    void turnedFrames_driveOff_giveTheAxis(double latitudeDeg) {
        Site site = Site.ofDegrees(latitudeDeg, 0, 0);
        SimulatedFork fork = fork(site, Drive.STANDING);

        List<RenderedFrame> frames = photographer(site)
                .takeTurning(fork, NOW, Angle.ofDegrees(30), 3, Duration.ofSeconds(40), EXPOSURE, new Random(1));

        assertThat(frames).hasSize(3);
        for (int i = 1; i < 3; i++) {
            Vector3D turned = frames.get(i)
                    .truth()
                    .attitude()
                    .turnedSince(frames.get(i - 1).truth().attitude());
            assertThat(Vector3D.distance(turned, fork.northernEnd().scalarMultiply(-Math.toRadians(30))))
                    .isLessThan(1e-9);
            assertThat(frames.get(i).frame().facts().middle()).contains(NOW.plusSeconds(40L * i));
            assertThat(frames.get(i).truth().stars()).isNotEmpty();
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {54.6, -43.95})
    void turnedFrames_tracking_includeTheSkysRotation(double latitudeDeg) {
        Site site = Site.ofDegrees(latitudeDeg, 0, 0);
        SimulatedFork fork = fork(site, Drive.TRACKING);

        List<RenderedFrame> frames = photographer(site)
                .takeTurning(fork, NOW, Angle.ofDegrees(30), 2, Duration.ofSeconds(40), EXPOSURE, new Random(1));

        Vector3D turned = frames.get(1)
                .truth()
                .attitude()
                .turnedSince(frames.get(0).truth().attitude());
        double expected = Math.toRadians(30) + 40 * 2 * Math.PI / 86164.0905;
        assertThat(Vector3D.distance(turned, fork.northernEnd().scalarMultiply(-expected)))
                .isLessThan(1e-9);
    }

    @ParameterizedTest
    @ValueSource(doubles = {54.6, -43.95})
    void framesOfOneField_driftByTheAxisOffset(double latitudeDeg) {
        Site site = Site.ofDegrees(latitudeDeg, 0, 0);
        List<RenderedFrame> frames = photographer(site)
                .takeWatching(fork(site, Drive.TRACKING), NOW, 3, Duration.ofMinutes(2), EXPOSURE, new Random(1));

        // An axis 36′ off the pole makes a star drift by at most 0.2625″ per minute and arcminute, 37.8″ in 4 minutes;
        // the rest of the rotation and refraction add a few.
        var first = frames.get(0).truth().centre();
        var last = frames.get(2).truth().centre();
        double drift = Math.hypot(
                last.declination().minus(first.declination()).arcseconds(),
                last.rightAscension()
                                .minus(first.rightAscension())
                                .wrappedSigned()
                                .arcseconds()
                        * first.declination().cos());
        assertThat(drift).isBetween(10.0, 45.0);
        assertThat(frames.get(2).truth().scalePerPixel().arcseconds()).isCloseTo(6.188, within(0.001));
    }
}
