package polewright.axis.camera;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.axis.AxisOffset;
import polewright.axis.AxisPointing;
import polewright.axis.sighting.SkySetting;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.attitude.RotationCovariance;
import polewright.sky.place.Site;

/** What the frames tell against themselves. */
class FrameChecksTest {
    private static final RotationCovariance GOOD = TurnedCamera.sigmas(1, 20);
    private static final double SKY_DEG_PER_SECOND = Math.toDegrees(TurnedCamera.SKY_RAD_PER_SECOND);

    private static TurnedCamera camera(Site site) {
        return TurnedCamera.of(site, AxisPointing.of(site, AxisOffset.ofArcminutes(30, -20)), 50, 70);
    }

    private static List<FrameFinding> findings(Site site, List<CameraAttitude> frames) {
        return FrameChecks.of(AxisFromFrames.of(site, frames), Drive.NOT_TOLD);
    }

    private static <T extends FrameFinding> T only(List<FrameFinding> findings, Class<T> kind) {
        assertThat(findings).hasSize(1).hasOnlyElementsOfType(kind);
        return kind.cast(findings.get(0));
    }

    /** The camera turned in its holder by a vector in camera axes, arcsec, from a frame on. */
    private static List<CameraAttitude> moved(List<CameraAttitude> frames, int from, Vector3D byArcsec) {
        List<CameraAttitude> moved = new ArrayList<>(frames);
        for (int i = from; i < frames.size(); i++) {
            moved.set(i, TurnedCamera.disturbed(frames.get(i), byArcsec.getX(), byArcsec.getY(), byArcsec.getZ()));
        }
        return moved;
    }

    private static List<CameraAttitude> frames(TurnedCamera camera, Random random, double... westDeg) {
        List<CameraAttitude> frames = new ArrayList<>();
        for (double west : westDeg) {
            frames.add(TurnedCamera.noisy(camera.frame(west, 70.0 * frames.size(), GOOD), random));
        }
        return frames;
    }

    @ParameterizedTest
    @CsvSource({"54.60", "-43.95"})
    void goodFramesAreSaidToBeGood(double latitudeDeg) {
        Site site = Site.ofDegrees(latitudeDeg, latitudeDeg > 0 ? -2.9 : 170.4, 200);
        Instant dark = Instant.parse(latitudeDeg > 0 ? "2026-11-25T20:00:00Z" : "2026-11-25T11:00:00Z");
        TurnedCamera camera =
                new TurnedCamera(site, camera(site).axis(), camera(site).inCamera(), dark);
        assertThat(findings(site, frames(camera, new Random(1), -30, 0, 30))).isEmpty();
    }

    @Test
    void twoFramesCheckNothing() {
        List<FrameFinding> findings =
                findings(SkySetting.LARKFELL, frames(camera(SkySetting.LARKFELL), new Random(1), -30, 30));
        only(findings, FrameFinding.Unchecked.class);
    }

    @Test
    void smallTurnIsSaid() {
        List<FrameFinding> findings =
                findings(SkySetting.LARKFELL, frames(camera(SkySetting.LARKFELL), new Random(1), -6, 0, 6));
        assertThat(only(findings, FrameFinding.SmallTurn.class).turn().degrees())
                .isCloseTo(12, within(0.1));
    }

    /**
     * A bend of so many standard deviations (of the figures left over for checking) is seen in at least 95 %, and none is
     * seen where there is none in more than 2 %.
     */
    @ParameterizedTest
    @CsvSource({"54.60, 3", "-43.95, 3", "54.60, 4"})
    void bendOfFiveSigmasIsSeen_andNoneWhereThereIsNone(double latitudeDeg, int count) {
        Site site = Site.ofDegrees(latitudeDeg, 0, 200);
        TurnedCamera camera = camera(site);
        Random random = new Random(17);
        double[] west = new double[count];
        for (int i = 0; i < count; i++) {
            west[i] = -40 + 30 * i;
        }
        int trials = 1000;
        int seen = 0;
        int falselySeen = 0;
        for (int i = 0; i < trials; i++) {
            List<CameraAttitude> still = frames(camera, random, west);
            falselySeen += AxisFromFrames.of(site, still).closes() ? 0 : 1;
            Vector3D direction =
                    new Vector3D(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).normalize();
            List<CameraAttitude> exact = new ArrayList<>();
            for (CameraAttitude frame : still) {
                exact.add(camera.frame(west[exact.size()], 70.0 * exact.size(), frame.covariance()));
            }
            // Scaled so that without noise the frames would miss each other by five sigmas.
            double missOfOneArcmin =
                    Math.sqrt(AxisFromFrames.of(site, moved(exact, count - 1, direction.scalarMultiply(60)))
                            .chiSquared());
            Vector3D bend = direction.scalarMultiply(60 * 5 / missOfOneArcmin);
            seen += AxisFromFrames.of(site, moved(still, count - 1, bend)).closes() ? 0 : 1;
        }
        assertThat(seen).isGreaterThanOrEqualTo(950);
        assertThat(falselySeen).isLessThanOrEqualTo(20);
    }

    @Test
    void framesThatDoNotCloseWidenTheUncertainty() {
        TurnedCamera camera = camera(SkySetting.LARKFELL);
        List<CameraAttitude> still = frames(camera, new Random(5), -40, -10, 20, 50);
        List<CameraAttitude> bent = moved(moved(still, 1, new Vector3D(40, 0, 0)), 2, new Vector3D(0, -70, 200));
        AxisFromFrames good = AxisFromFrames.of(SkySetting.LARKFELL, still);
        AxisFromFrames bad = AxisFromFrames.of(SkySetting.LARKFELL, bent);
        assertThat(good.widenedBy()).isEqualTo(1);
        assertThat(bad.widenedBy()).isCloseTo(bad.chiSquared() / 4, within(1e-9));
        assertThat(bad.estimate().altitudeSigma().arcseconds()
                        / good.estimate().altitudeSigma().arcseconds())
                .isCloseTo(Math.sqrt(bad.widenedBy()), within(0.01));
        FrameFinding.NotRigid finding = only(findings(SkySetting.LARKFELL, bent), FrameFinding.NotRigid.class);
        assertThat(finding.sigmas()).isCloseTo(Math.sqrt(bad.widenedBy()), within(1e-9));
        assertThat(finding.farthest().arcseconds()).isGreaterThan(10);
    }

    /** Turning the declination axis moves the boresight from or to the axis; that axis is square to both. */
    @ParameterizedTest
    @CsvSource({"54.60, 1, 0.1", "54.60, 2, -0.1", "-43.95, 1, 0.5", "-43.95, 3, -2"})
    void movedDeclinationIsNamed(double latitudeDeg, int after, double byDeg) {
        Site site = Site.ofDegrees(latitudeDeg, latitudeDeg > 0 ? -2.9 : 170.4, 200);
        Instant dark = Instant.parse(latitudeDeg > 0 ? "2026-11-25T20:00:00Z" : "2026-11-25T11:00:00Z");
        TurnedCamera camera =
                new TurnedCamera(site, camera(site).axis(), camera(site).inCamera(), dark);
        List<CameraAttitude> still = frames(camera, new Random(9), -45, -15, 15, 45);
        Vector3D declinationAxis =
                camera.inCamera().crossProduct(Vector3D.PLUS_K).normalize();
        List<CameraAttitude> frames = new ArrayList<>(still);
        for (int i = after; i < 4; i++) {
            CameraAttitude frame = still.get(i);
            // The tube turns away from the axis about the declination axis.
            Rotation turn = new Rotation(declinationAxis, Math.toRadians(byDeg), RotationConvention.VECTOR_OPERATOR);
            frames.set(i, CameraAttitude.of(frame.at(), frame.cameraToEnu().applyTo(turn), frame.covariance()));
        }
        FrameFinding.DeclinationMoved finding = only(findings(site, frames), FrameFinding.DeclinationMoved.class);
        assertThat(finding.after()).isEqualTo(after);
        assertThat(finding.by().degrees()).isCloseTo(byDeg, within(0.02));
    }

    /** With three frames one figure is left to tell apart what happened, and it does for moves like these. */
    @ParameterizedTest
    @CsvSource({"1, 0.2", "2, 0.2", "1, -1", "2, -1"})
    void movedDeclinationIsNamedInThreeFrames(int after, double byDeg) {
        TurnedCamera camera = camera(SkySetting.LARKFELL);
        List<CameraAttitude> still = frames(camera, new Random(9), -30, 0, 30);
        Vector3D declinationAxis =
                camera.inCamera().crossProduct(Vector3D.PLUS_K).normalize();
        List<CameraAttitude> frames = moved(still, after, declinationAxis.scalarMultiply(3600 * byDeg));
        AxisFromFrames found = AxisFromFrames.of(SkySetting.LARKFELL, frames);
        assertThat(found.closes()).isFalse();
        FrameFinding.DeclinationMoved finding =
                only(FrameChecks.of(found, Drive.NOT_TOLD), FrameFinding.DeclinationMoved.class);
        assertThat(finding.after()).isEqualTo(after);
        // The roll of three frames tells it to some 10″.
        assertThat(finding.by().degrees()).isCloseTo(byDeg, within(0.02));
    }

    @Test
    void rolledCameraIsNamed() {
        TurnedCamera camera = camera(SkySetting.LARKFELL);
        List<CameraAttitude> frames =
                moved(frames(camera, new Random(9), -45, -15, 15, 45), 2, new Vector3D(0, 0, 600));
        FrameFinding.CameraSlipped finding =
                only(findings(SkySetting.LARKFELL, frames), FrameFinding.CameraSlipped.class);
        assertThat(finding.after()).isEqualTo(2);
        // 600″ of roll at 50° from the axis.
        assertThat(finding.by().arcseconds()).isCloseTo(600 * Math.sin(Math.toRadians(50)), within(60.0));
    }

    /** Evening by the stars, but the clock twelve hours on: the Sun tells. */
    @Test
    void clockTwelveHoursOffIsSeenByTheSun() {
        TurnedCamera camera = camera(SkySetting.LARKFELL);
        TurnedCamera noon = new TurnedCamera(
                SkySetting.LARKFELL, camera.axis(), camera.inCamera(), SkySetting.EVENING.minusSeconds(8 * 3600));
        List<FrameFinding> findings = findings(SkySetting.LARKFELL, frames(noon, new Random(1), -30, 0, 30));
        assertThat(findings).hasSize(3).hasOnlyElementsOfType(FrameFinding.SunTooHigh.class);
        FrameFinding.SunTooHigh first = (FrameFinding.SunTooHigh) findings.get(0);
        assertThat(first.frame()).isEqualTo(1);
        assertThat(first.sunAltitude().degrees()).isBetween(10.0, 16.0);
    }

    @Test
    void fieldUnderTheHorizonIsSeen() {
        TurnedCamera camera = TurnedCamera.of(
                SkySetting.LARKFELL, AxisPointing.of(SkySetting.LARKFELL, AxisOffset.ofArcminutes(30, -20)), 80, 70);
        List<FrameFinding> findings = findings(SkySetting.LARKFELL, frames(camera, new Random(1), 120, 150, 180));
        assertThat(findings).hasSize(3).hasOnlyElementsOfType(FrameFinding.BelowHorizon.class);
    }

    @Test
    void axisFarFromThePoleIsSeen() {
        TurnedCamera camera = TurnedCamera.of(
                SkySetting.LARKFELL, AxisPointing.of(SkySetting.LARKFELL, AxisOffset.ofArcminutes(-1900, 0)), 30, 70);
        List<FrameFinding> findings = findings(SkySetting.LARKFELL, frames(camera, new Random(1), -30, 0, 30));
        assertThat(only(findings, FrameFinding.FarFromPole.class).distance().degrees())
                .isCloseTo(Math.toDegrees(Math.asin(Math.toRadians(1900 / 60.0))), within(0.2));
    }

    @Test
    void hoursBetweenFramesAreSaid() {
        TurnedCamera camera = camera(SkySetting.LARKFELL);
        List<CameraAttitude> frames =
                List.of(camera.frame(-30, 0, GOOD), camera.frame(0, 60, GOOD), camera.frame(30, 3 * 3600, GOOD));
        assertThat(only(findings(SkySetting.LARKFELL, frames), FrameFinding.FarApartInTime.class)
                        .span()
                        .toMinutes())
                .isEqualTo(180);
    }

    @ParameterizedTest
    @CsvSource({
        "54.60, 1, TRACKING, true",
        "-43.95, 1, TRACKING, true",
        "54.60, 0, STANDING, true",
        "-43.95, 0, STANDING, true",
        "54.60, 0.5, NOT_TOLD, false"
    })
    void twoFramesAtOnePlaceTellTheDrive(double latitudeDeg, double share, Drive drive, boolean seen) {
        Site site = Site.ofDegrees(latitudeDeg, 0, 200);
        TurnedCamera camera = camera(site);
        double sky = SKY_DEG_PER_SECOND * 60 * share;
        Random random = new Random(2);
        List<CameraAttitude> frames = List.of(
                TurnedCamera.noisy(camera.frame(-30, 0, GOOD), random),
                TurnedCamera.noisy(camera.frame(-30 + sky, 60, GOOD), random),
                TurnedCamera.noisy(camera.frame(20, 120, GOOD), random));
        AxisFromFrames axis = AxisFromFrames.of(site, frames);
        assertThat(FoundDrive.of(axis, Drive.NOT_TOLD)).isEqualTo(new FoundDrive(drive, seen));
        List<FrameFinding> findings = FrameChecks.of(axis, Drive.NOT_TOLD);
        assertThat(findings.stream().anyMatch(FrameFinding.NeitherTracksNorStands.class::isInstance))
                .isEqualTo(!seen);
    }

    @Test
    void driveIsTakenAsToldWhenFramesDoNotTell() {
        AxisFromFrames axis =
                AxisFromFrames.of(SkySetting.LARKFELL, frames(camera(SkySetting.LARKFELL), new Random(1), -30, 0, 30));
        assertThat(FoundDrive.of(axis, Drive.STANDING)).isEqualTo(new FoundDrive(Drive.STANDING, false));
    }

    @Test
    void driveThatDidOtherwiseThanToldIsSaid() {
        TurnedCamera camera = camera(SkySetting.LARKFELL);
        AxisFromFrames axis = AxisFromFrames.of(
                SkySetting.LARKFELL,
                List.of(camera.frame(-30, 0, GOOD), camera.frame(-30, 60, GOOD), camera.frame(20, 120, GOOD)));
        assertThat(FrameChecks.of(axis, Drive.TRACKING))
                .containsExactly(new FrameFinding.DriveNotAsTold(Drive.TRACKING, Drive.STANDING));
    }
}
