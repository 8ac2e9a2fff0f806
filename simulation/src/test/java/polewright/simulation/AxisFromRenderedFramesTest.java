package polewright.simulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.alignment.camera.AxisFromFrames;
import polewright.image.match.FrameMatcher;
import polewright.image.match.MatchHint;
import polewright.image.match.MatchedFrame;
import polewright.image.match.ScaleRange;
import polewright.image.star.StarFinder;
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
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/** From pixels to the polar axis, through every module on the way; bench/axis-honesty does it five hundred times. */
@Tag("slow")
class AxisFromRenderedFramesTest {
    private static final Instant NOW = Instant.parse("2026-10-14T21:00:00Z");
    private static final Weather AIR = Weather.standardAt(200);
    private static final FrameMatcher MATCHER = new FrameMatcher(StarAtlas.bundled());

    private static CameraAttitude attitude(RenderedFrame rendered, Site site) {
        MatchHint hint = new MatchHint(
                Optional.empty(),
                ScaleRange.about(rendered.frame().facts().scalePerPixel().orElseThrow(), 0.2),
                Optional.empty(),
                2026.8);
        MatchedFrame matched = (MatchedFrame) MATCHER.match(StarFinder.find(rendered.frame()), hint);
        Instant middle = rendered.frame().facts().middle().orElseThrow();
        return matched.attitude(ObservingMoment.of(site, SkyTime.of(middle), AIR), StarAtlas.bundled());
    }

    private static List<RenderedFrame> frames(Site site, Drive drive, AxisOffset offset, double declinationDeg) {
        SimulatedCamera camera =
                SimulatedCamera.of("test", CameraOptics.clean(400, 80, 5), Detector.flawless(1936, 1216, 5));
        SimulatedFork fork = new SimulatedFork(
                AxisPointing.of(site, offset).northernEnd(site),
                Vector3D.PLUS_K,
                new TubeOnFork(Angle.ofArcminutes(20), Angle.ZERO, Angle.ofDegrees(33), Angle.ZERO),
                Angle.ofDegrees(-40),
                Angle.ofDegrees(declinationDeg * site.hemisphereSign()),
                drive,
                NOW);
        return new SimulatedPhotographer(
                        new FrameRenderer(StarAtlas.bundled()), camera, site, AIR, SkyConditions.COUNTRY)
                .takeTurning(
                        fork,
                        NOW,
                        Angle.ofDegrees(30),
                        3,
                        Duration.ofSeconds(40),
                        Duration.ofSeconds(2),
                        new Random(4));
    }

    @ParameterizedTest
    @CsvSource({
        "54.6, true, 30, -20, 80",
        "54.6, false, -400, 200, 60",
        "-43.95, true, -25, 40, 85",
        "-43.95, false, 300, -150, 70",
    })
    void axis_isWithinItsUncertainty(double latitudeDeg, boolean tracking, double east, double up, double dec) {
        Site site = Site.ofDegrees(latitudeDeg, 0, 200);
        Drive drive = tracking ? Drive.TRACKING : Drive.STANDING;
        AxisOffset truth = AxisOffset.ofArcminutes(east, up);
        List<CameraAttitude> attitudes = new ArrayList<>();
        for (RenderedFrame rendered : frames(site, drive, truth, dec)) {
            CameraAttitude found = attitude(rendered, site);
            Vector3D error = found.turnedSince(rendered.truth().attitude());
            Vector3D boresight = found.boresight();
            double roll = Math.toDegrees(error.dotProduct(boresight)) * 3600;
            double centre =
                    Math.toDegrees(Vector3D.crossProduct(error, boresight).getNorm()) * 3600;
            assertThat(centre).isLessThan(5 * found.covariance().centreSigma().arcseconds());
            assertThat(Math.abs(roll))
                    .isLessThan(4 * found.covariance().rollSigma().arcseconds());
            attitudes.add(found);
        }

        AxisFromFrames axis = AxisFromFrames.of(site, attitudes);

        assertThat(axis.offset().minus(truth).distance().arcseconds()).isLessThan(8);
        // 99.9 % of chi-squared with two degrees of freedom lie below 13.8 (any table).
        assertThat(axis.covariance().normalisedSquare(axis.offset().minus(truth)))
                .isLessThan(13.8);
        assertThat(axis.closes()).isTrue();
    }
}
