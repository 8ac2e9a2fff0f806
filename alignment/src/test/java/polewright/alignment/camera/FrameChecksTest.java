package polewright.alignment.camera;

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
import polewright.alignment.sighting.SkySetting;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.attitude.RotationCovariance;
import polewright.sky.place.Site;

/** Checks of an axis against its own frames. */
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

    /** From a frame on, the camera rotated in its holder by a vector in camera axes, arcsec. */
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
    void goodFrames_haveNoFindings(double latitudeDeg) {
        Site site = Site.ofDegrees(latitudeDeg, latitudeDeg > 0 ? -2.9 : 170.4, 200);
        Instant dark = Instant.parse(latitudeDeg > 0 ? "2026-11-25T20:00:00Z" : "2026-11-25T11:00:00Z");
        TurnedCamera camera =
                new TurnedCamera(site, camera(site).axis(), camera(site).inCamera(), dark);
        assertThat(findings(site, frames(camera, new Random(1), -30, 0, 30))).isEmpty();
    }

    @Test
    void twoFrames_areUnchecked() {
        List<FrameFinding> findings =
                findings(SkySetting.LARKFELL, frames(camera(SkySetting.LARKFELL), new Random(1), -30, 30));
        only(findings, FrameFinding.Unchecked.class);
    }

    @Test
    void smallTurn_isReported() {
        List<FrameFinding> findings =
                findings(SkySetting.LARKFELL, frames(camera(SkySetting.LARKFELL), new Random(1), -6, 0, 6));
        assertThat(only(findings, FrameFinding.SmallTurn.class).turn().degrees())
                .isCloseTo(12, within(0.1));
    }

    // Without the explanations: computing them for thousands of frames would be wasted.
    private static double chiSquared(TurnedCamera camera, List<CameraAttitude> frames) {
        return AxisFit.of(frames, camera.axis().elevatedEnd()).chiSquared();
    }

    private static boolean closes(TurnedCamera camera, List<CameraAttitude> frames) {
        return AxisFromFrames.closes(chiSquared(camera, frames), 2 * frames.size() - 4);
    }

    /**
     * A deflection of this many standard deviations (of the degrees of freedom) is detected in at least 95 %, and a
     * false one in no more than 2 %.
     */
    @ParameterizedTest
    @CsvSource({"54.60, 3", "-43.95, 3", "54.60, 4"})
    void deflectionOfFiveSigmas_isDetected_withoutFalseAlarms(double latitudeDeg, int count) {
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
            falselySeen += closes(camera, still) ? 0 : 1;
            Vector3D direction =
                    new Vector3D(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).normalize();
            List<CameraAttitude> exact = new ArrayList<>();
            for (CameraAttitude frame : still) {
                exact.add(camera.frame(west[exact.size()], 70.0 * exact.size(), frame.covariance()));
            }
            // Scaled so that without noise the frames would disagree by five sigmas.
            double missOfOneArcmin =
                    Math.sqrt(chiSquared(camera, moved(exact, count - 1, direction.scalarMultiply(60))));
            Vector3D bend = direction.scalarMultiply(60 * 5 / missOfOneArcmin);
            seen += closes(camera, moved(still, count - 1, bend)) ? 0 : 1;
        }
        assertThat(seen).isGreaterThanOrEqualTo(950);
        assertThat(falselySeen).isLessThanOrEqualTo(20);
    }

    /**
     * A fork that flexes by some arcseconds at each frame: nothing worse is suspected, and the region covers the axis.
     */
    @Test
    void smallDisagreement_isExplainedByFlexure_andWidensTheUncertainty() {
        TurnedCamera camera = camera(SkySetting.LARKFELL);
        List<CameraAttitude> still = frames(camera, new Random(5), -40, -10, 20, 50);
        List<CameraAttitude> bent = moved(moved(still, 1, new Vector3D(25, 12, 0)), 2, new Vector3D(-30, -30, 0));
        AxisFromFrames good = AxisFromFrames.of(SkySetting.LARKFELL, still);
        AxisFromFrames bad = AxisFromFrames.of(SkySetting.LARKFELL, bent);
        assertThat(good.explanations()).isEmpty();
        assertThat(bad.reducedChiSquared()).isCloseTo(bad.chiSquared() / 4, within(1e-9));
        assertThat(bad.estimate().altitudeSigma().arcseconds())
                .isGreaterThan(1.5 * good.estimate().altitudeSigma().arcseconds());
        assertThat(bad.covariance().normalisedSquare(bad.offset().minus(AxisOffset.ofArcminutes(30, -20))))
                .isLessThan(-2 * Math.log(0.05));
        FrameFinding.NotRigid finding = only(findings(SkySetting.LARKFELL, bent), FrameFinding.NotRigid.class);
        assertThat(finding.sigmas()).isCloseTo(Math.sqrt(bad.reducedChiSquared()), within(1e-9));
        assertThat(finding.farthest().arcseconds()).isGreaterThan(5);
    }

    /**
     * Turning the declination axis moves the boresight toward the axis or away from it; that axis is perpendicular to
     * both.
     */
    @ParameterizedTest
    @CsvSource({"54.60, 1, 0.1", "54.60, 2, -0.1", "-43.95, 1, 0.5", "-43.95, 3, -2"})
    void movedDeclination_isNamed(double latitudeDeg, int after, double byDeg) {
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
        FrameFinding.Disturbed finding = only(findings(site, frames), FrameFinding.Disturbed.class);
        assertThat(finding.suspect()).isEqualTo(new FrameExplanations.Suspect(after + 1, false));
        FrameExplanations.Explanation likeliest = finding.causes().get(0);
        assertThat(likeliest.what())
                .isEqualTo(new FrameDisturbance(FrameDisturbance.Kind.DECLINATION_MOVED, after + 1));
        assertThat(likeliest.size().degrees()).isCloseTo(Math.abs(byDeg), within(0.02));
    }

    /**
     * Three frames are consistent with a move in either gap, of several kinds: none is named, and the region covers the
     * axis.
     */
    @ParameterizedTest
    @CsvSource({"1, 0.2", "2, 0.2", "1, -1", "2, -1"})
    void movedDeclinationInThreeFrames_isOnePossibleCause_andAFourthFrameIsRequested(int after, double byDeg) {
        TurnedCamera camera = camera(SkySetting.LARKFELL);
        List<CameraAttitude> still = frames(camera, new Random(9), -30, 0, 30);
        Vector3D declinationAxis =
                camera.inCamera().crossProduct(Vector3D.PLUS_K).normalize();
        List<CameraAttitude> frames = moved(still, after, declinationAxis.scalarMultiply(3600 * byDeg));
        AxisFromFrames found = AxisFromFrames.of(SkySetting.LARKFELL, frames);
        FrameFinding.DoesNotClose finding =
                only(FrameChecks.of(found, Drive.NOT_TOLD), FrameFinding.DoesNotClose.class);
        assertThat(finding.causes())
                .extracting(FrameExplanations.Explanation::what)
                .contains(new FrameDisturbance(FrameDisturbance.Kind.DECLINATION_MOVED, after + 1));
        assertThat(found.covariance().normalisedSquare(found.offset().minus(AxisOffset.ofArcminutes(30, -20))))
                .isLessThan(-2 * Math.log(0.05));
    }

    /** The base tilted by 15′ about a level line: the axis moves with it, and the region covers its final position. */
    @ParameterizedTest
    @CsvSource({"3, 2", "3, 3", "4, 2", "4, 3", "4, 4"})
    void bumpedMount_isCoveredByTheRegion_andDatedByFourFrames(int count, int before) {
        TurnedCamera camera = camera(SkySetting.LARKFELL);
        double[] west = {-45, -15, 15, 45};
        List<CameraAttitude> frames =
                new ArrayList<>(frames(camera, new Random(3), java.util.Arrays.copyOf(west, count)));
        Rotation bump =
                new Rotation(new Vector3D(0.8, 0.6, 0), Math.toRadians(0.25), RotationConvention.VECTOR_OPERATOR);
        for (int i = before - 1; i < count; i++) {
            frames.set(i, frames.get(i).turnedBy(bump));
        }
        AxisOffset after = new AxisPointing(bump.applyTo(camera.axis().elevatedEnd())).offset(SkySetting.LARKFELL);
        AxisFromFrames found = AxisFromFrames.of(SkySetting.LARKFELL, frames);
        assertThat(found.covariance().normalisedSquare(found.offset().minus(after)))
                .isLessThan(-2 * Math.log(0.05));
        FrameFinding finding = FrameChecks.of(found, Drive.NOT_TOLD).get(0);
        if (count == 3) {
            assertThat(finding).isInstanceOf(FrameFinding.DoesNotClose.class);
        } else {
            assertThat(((FrameFinding.Disturbed) finding).suspect())
                    .isEqualTo(new FrameExplanations.Suspect(before, false));
        }
    }

    /** A header time that is wrong by minutes rotates that frame about the celestial pole. */
    @Test
    void wrongTimeOfOneFrame_isNamedWithItsSize() {
        TurnedCamera camera = camera(SkySetting.LARKFELL);
        List<CameraAttitude> frames = new ArrayList<>(frames(camera, new Random(4), -60, -20, 20, 60));
        Rotation later = new Rotation(
                AxisPointing.atPole(SkySetting.LARKFELL).elevatedEnd(),
                -20 * 60 * TurnedCamera.SKY_RAD_PER_SECOND,
                RotationConvention.VECTOR_OPERATOR);
        frames.set(1, frames.get(1).turnedBy(later));
        FrameFinding.Disturbed finding = only(findings(SkySetting.LARKFELL, frames), FrameFinding.Disturbed.class);
        assertThat(finding.suspect()).isEqualTo(new FrameExplanations.Suspect(2, true));
        FrameExplanations.Explanation likeliest = finding.causes().get(0);
        assertThat(likeliest.what()).isEqualTo(new FrameDisturbance(FrameDisturbance.Kind.TIME_WRONG, 2));
        // Twenty minutes are 5° of sky.
        assertThat(likeliest.size().degrees()).isCloseTo(5, within(0.2));
    }

    @Test
    void rolledCamera_isNamed() {
        TurnedCamera camera = camera(SkySetting.LARKFELL);
        List<CameraAttitude> frames =
                moved(frames(camera, new Random(9), -45, -15, 15, 45), 2, new Vector3D(0, 0, 600));
        FrameFinding.Disturbed finding = only(findings(SkySetting.LARKFELL, frames), FrameFinding.Disturbed.class);
        assertThat(finding.suspect()).isEqualTo(new FrameExplanations.Suspect(3, false));
        FrameExplanations.Explanation likeliest = finding.causes().get(0);
        assertThat(likeliest.what()).isEqualTo(new FrameDisturbance(FrameDisturbance.Kind.CAMERA_SLIPPED, 3));
        // 600″ of roll at 50° from the axis.
        assertThat(likeliest.size().arcseconds()).isCloseTo(600 * Math.sin(Math.toRadians(50)), within(60.0));
    }

    /** Evening by the stars, but the clock is twelve hours fast: the Sun shows it. */
    @Test
    void clockTwelveHoursOff_isDetectedByTheSun() {
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
    void fieldBelowTheHorizon_isDetected() {
        TurnedCamera camera = TurnedCamera.of(
                SkySetting.LARKFELL, AxisPointing.of(SkySetting.LARKFELL, AxisOffset.ofArcminutes(30, -20)), 80, 70);
        List<FrameFinding> findings = findings(SkySetting.LARKFELL, frames(camera, new Random(1), 120, 150, 180));
        assertThat(findings).hasSize(3).hasOnlyElementsOfType(FrameFinding.BelowHorizon.class);
    }

    @Test
    void axisFarFromThePole_isDetected() {
        TurnedCamera camera = TurnedCamera.of(
                SkySetting.LARKFELL, AxisPointing.of(SkySetting.LARKFELL, AxisOffset.ofArcminutes(-1900, 0)), 30, 70);
        List<FrameFinding> findings = findings(SkySetting.LARKFELL, frames(camera, new Random(1), -30, 0, 30));
        assertThat(only(findings, FrameFinding.FarFromPole.class).distance().degrees())
                .isCloseTo(Math.toDegrees(Math.asin(Math.toRadians(1900 / 60.0))), within(0.2));
    }

    @Test
    void hoursBetweenFrames_areReported() {
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
    void twoFramesAtOnePosition_showTheDrive(double latitudeDeg, double share, Drive drive, boolean seen) {
        Site site = Site.ofDegrees(latitudeDeg, 0, 200);
        TurnedCamera camera = camera(site);
        double sky = SKY_DEG_PER_SECOND * 60 * share;
        Random random = new Random(2);
        List<CameraAttitude> frames = List.of(
                TurnedCamera.noisy(camera.frame(-30, 0, GOOD), random),
                TurnedCamera.noisy(camera.frame(-30 + sky, 60, GOOD), random),
                TurnedCamera.noisy(camera.frame(20, 120, GOOD), random));
        AxisFromFrames axis = AxisFromFrames.of(site, frames);
        assertThat(InferredDrive.of(axis, Drive.NOT_TOLD)).isEqualTo(new InferredDrive(drive, seen));
        List<FrameFinding> findings = FrameChecks.of(axis, Drive.NOT_TOLD);
        assertThat(findings.stream().anyMatch(FrameFinding.NeitherTracksNorStands.class::isInstance))
                .isEqualTo(!seen);
    }

    @Test
    void drive_isAsStated_ifFramesDoNotShowIt() {
        AxisFromFrames axis =
                AxisFromFrames.of(SkySetting.LARKFELL, frames(camera(SkySetting.LARKFELL), new Random(1), -30, 0, 30));
        assertThat(InferredDrive.of(axis, Drive.STANDING)).isEqualTo(new InferredDrive(Drive.STANDING, false));
    }

    @Test
    void driveContraryToStatement_isReported() {
        TurnedCamera camera = camera(SkySetting.LARKFELL);
        AxisFromFrames axis = AxisFromFrames.of(
                SkySetting.LARKFELL,
                List.of(camera.frame(-30, 0, GOOD), camera.frame(-30, 60, GOOD), camera.frame(20, 120, GOOD)));
        assertThat(FrameChecks.of(axis, Drive.TRACKING))
                .containsExactly(new FrameFinding.DriveNotAsTold(Drive.TRACKING, Drive.STANDING));
    }
}
