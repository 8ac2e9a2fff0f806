package polewright.alignment.fix;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.alignment.camera.Drive;
import polewright.alignment.camera.TurnedCamera;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.TurnedFrames;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.attitude.RotationCovariance;
import polewright.sky.place.Site;

/** Camera frames in the fix of a night. */
class CameraFixTest {
    private static final RotationCovariance GOOD = TurnedCamera.sigmas(1, 20);

    private static TurnedFrames frames(TurnedCamera camera, Random random) {
        return TurnedFrames.of(
                List.of(
                        TurnedCamera.noisy(camera.frame(-40, 0, GOOD), random),
                        TurnedCamera.noisy(camera.frame(-5, 60, GOOD), random),
                        TurnedCamera.noisy(camera.frame(30, 120, GOOD), random)),
                Drive.NOT_TOLD);
    }

    private static Fix fix(Site site, Step... steps) {
        return FixSolver.solve(site, Rig.typicalForkOnWedge(), KnownAxis.AIR, List.of(steps));
    }

    @ParameterizedTest
    @CsvSource({"54.60, 30, -20", "54.60, 800, -500", "-43.95, -30, 20", "-43.95, 500, 800", "3, -40, -200"})
    void framesAlone_giveTheFix_atAnyOffset(double latitudeDeg, double east, double up) {
        Site site = Site.ofDegrees(latitudeDeg, 0, 200);
        AxisPointing axis = AxisPointing.of(site, AxisOffset.ofArcminutes(east, up));
        TurnedFrames sighting = frames(TurnedCamera.of(site, axis, 20, 50), new Random(1));
        Fix fix = fix(site, Step.Sighted.of(2, sighting, site, KnownAxis.AIR));
        assertThat(fix).isInstanceOf(Fix.Solved.class);
        assertThat(fix.state().axis().separation(axis).arcseconds()).isLessThan(40);
        assertThat(fix.state().offsetCovariance().largestSigma().arcseconds()).isBetween(5.0, 20.0);
        assertThat(fix.state()
                        .offsetCovariance()
                        .normalisedSquare(fix.state().offset().minus(axis.offset(site))))
                .isLessThan(9.2);
        assertThat(fix.agreements()).singleElement().satisfies(a -> {
            assertThat(a.kind()).isEqualTo("camera frames");
            assertThat(a.figures()).isEqualTo(2);
        });
    }

    @Test
    void frames_outweighCompassAndScale() {
        Site site = Site.ofDegrees(-43.95, 0, 200);
        KnownAxis known = KnownAxis.exactly(site, AxisOffset.ofArcminutes(60, 40));
        AxisPointing misread = AxisPointing.of(site, AxisOffset.ofArcminutes(150, 20));
        Fix fix = fix(
                site,
                known.at(misread).step(2, known.at(misread).compass(CompassBearing.USUAL_SIGMA)),
                known.at(misread).step(3, known.at(misread).scale(LevelledScale.USUAL_SIGMA)),
                known.step(4, frames(TurnedCamera.of(site, known.axis(), 60, 50), new Random(1))));
        assertThat(fix).isInstanceOf(Fix.Solved.class);
        assertThat(fix.state().axis().separation(known.axis()).arcseconds()).isLessThan(60);
    }

    /** The mount flexes by some arcseconds between one set of frames and the next; that is no contradiction. */
    @Test
    void framesThatDifferByMountFlexure_agree() {
        Site site = Site.ofDegrees(54.6, 0, 200);
        AxisPointing axis = AxisPointing.of(site, AxisOffset.ofArcminutes(3, 2));
        AxisPointing bent = AxisPointing.of(site, AxisOffset.ofArcminutes(3.1, 1.85));
        Fix fix = fix(
                site,
                Step.Sighted.of(2, frames(TurnedCamera.of(site, axis, 10, 50), new Random(1)), site, KnownAxis.AIR),
                Step.Sighted.of(3, frames(TurnedCamera.of(site, bent, 10, 50), new Random(2)), site, KnownAxis.AIR));
        assertThat(fix).isInstanceOf(Fix.Solved.class);
        assertThat(fix.agreements()).noneMatch(Agreement::contradictory);
    }

    @Test
    void framesOfAnotherAxis_contradictedByTheRest_areSetAside() {
        Site site = Site.ofDegrees(54.6, 0, 200);
        KnownAxis known = KnownAxis.exactly(site, AxisOffset.ofArcminutes(10, 5));
        AxisPointing elsewhere = AxisPointing.of(site, AxisOffset.ofArcminutes(200, -170));
        List<Step> steps = new ArrayList<>(known.consistentNight());
        steps.add(Step.Sighted.of(
                20, frames(TurnedCamera.of(site, elsewhere, 10, 50), new Random(1)), site, KnownAxis.AIR));
        Fix fix = FixSolver.solve(site, Rig.typicalForkOnWedge(), KnownAxis.AIR, steps);
        assertThat(fix.agreement(20).orElseThrow().contradictory()).isTrue();
        assertThat(fix.agreement(20).orElseThrow().likelyCause()).isEmpty();
        assertThat(fix.state().axis().separation(known.axis()).arcminutes()).isLessThan(5);
    }

    /** A frame taken after the screws were turned measures the axis as it is then, not as it was. */
    @ParameterizedTest
    @CsvSource({"54.60", "-43.95"})
    void frameAfterTurns_measuresTheNewAxis(double latitudeDeg) {
        Site site = Site.ofDegrees(latitudeDeg, 0, 200);
        AxisPointing axis = AxisPointing.of(site, AxisOffset.ofArcminutes(80, -60));
        TurnedCamera camera = TurnedCamera.of(site, axis, 15, 50);
        Rotation swung = new Rotation(Vector3D.PLUS_K, Math.toRadians(1.5), RotationConvention.VECTOR_OPERATOR);
        CameraAttitude after = TurnedCamera.noisy(camera.frame(30.5, 240, GOOD).turnedBy(swung), new Random(4));
        AxisPointing moved = new AxisPointing(swung.applyTo(axis.elevatedEnd()));
        TurnedFrames sighting =
                new TurnedFrames(frames(camera, new Random(3)).frames(), Optional.of(after), Drive.NOT_TOLD);
        Fix fix = fix(site, Step.Sighted.of(2, sighting, site, KnownAxis.AIR));
        assertThat(fix.state().axis().separation(moved).arcseconds()).isLessThan(40);
        assertThat(fix.state().axis().separation(axis).arcminutes()).isGreaterThan(40);
        assertThat(fix.state().offsetCovariance().largestSigma().arcseconds()).isBetween(5.0, 20.0);
    }

    /** Exact at every distance: the residual is the great-circle distance over sigma. */
    @ParameterizedTest
    @CsvSource({"0.01", "1", "20", "60"})
    void residual_isGreatCircleDistanceOverSigma(double degrees) {
        Site site = Site.ofDegrees(54.6, 0, 200);
        AxisPointing axis = AxisPointing.of(site, AxisOffset.ofArcminutes(3, 2));
        RotationCovariance alike = TurnedCamera.sigmas(2, 2);
        TurnedCamera camera = TurnedCamera.of(site, axis, 0, 0);
        TurnedFrames sighting =
                TurnedFrames.of(List.of(camera.frame(0, 0, alike), camera.frame(90, 60, alike)), Drive.NOT_TOLD);
        // Two frames 90° apart: σ/(√2 sin 45°) = σ in each direction, plus the flexure of the mount.
        double sigma = Math.hypot(2, TurnedFrames.MOUNT_FLEXURE.arcseconds());
        Vector3D hinge = axis.elevatedEnd().orthogonal();
        Vector3D supposed = new Rotation(hinge, Math.toRadians(degrees), RotationConvention.VECTOR_OPERATOR)
                .applyTo(axis.elevatedEnd());
        double[] residual = sighting.model(site, KnownAxis.AIR).residual(supposed);
        assertThat(Math.hypot(residual[0], residual[1]) * sigma / 3600).isCloseTo(degrees, within(1e-6));
        assertThat(Angle.ofDegrees(degrees).arcseconds()).isPositive();
    }
}
