package polewright.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.rig.MountKind;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.mount.rig.ScrewGeometry;
import polewright.mount.rig.ScrewSense;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.attitude.RotationCovariance;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

class SimulatedForkTest {
    private static final Instant NOW = Instant.parse("2026-10-14T21:00:00Z");
    private static final double SIDEREAL = 2 * Math.PI / 86164.0905;
    private static final TubeOnFork MISALIGNED =
            new TubeOnFork(Angle.ofArcminutes(21), Angle.ofArcminutes(-13), Angle.ofDegrees(37), Angle.ZERO);

    private static HiddenWedge wedge(double latitudeDeg, AxisOffset offset) {
        Site site = Site.ofDegrees(latitudeDeg, 0, 0);
        ScrewGeometry geometry = new ScrewGeometry.DegreesPerTurn(Angle.ofDegrees(0.5));
        Rig rig = new Rig(
                "plain",
                MountKind.FORK_ON_WEDGE,
                new Screw(geometry, ScrewSense.RIGHT, 0.1, 0.001, 0),
                new Screw(geometry, ScrewSense.RAISES, 0.1, 0.001, 0),
                Angle.ofDegrees(1.5),
                Angle.ofArcminutes(2),
                List.of());
        return HiddenWedge.of(site, rig, offset, new Random(5));
    }

    private static SimulatedFork fork(double latitudeDeg, TubeOnFork tube, double hourAngleDeg, double declinationDeg) {
        return SimulatedFork.on(wedge(latitudeDeg, AxisOffset.ofArcminutes(40, -25)), tube, NOW)
                .pointed(Angle.ofDegrees(hourAngleDeg), Angle.ofDegrees(declinationDeg), NOW);
    }

    /** Rotation vector from one attitude to the other, in ENU. */
    private static Vector3D turn(Rotation from, Rotation to) {
        Rotation carried = to.applyTo(from.revert());
        return carried.getAxis(RotationConvention.VECTOR_OPERATOR).scalarMultiply(carried.getAngle());
    }

    @ParameterizedTest
    @ValueSource(doubles = {54.6, 10, -10, -43.95})
    void turningInRightAscension_isAPureRotationAboutTheAxis(double latitudeDeg) {
        SimulatedFork fork = fork(latitudeDeg, MISALIGNED, -50, 40);

        for (double step : new double[] {30, 60, 90, -45}) {
            Vector3D turn = turn(
                    fork.cameraToEnu(NOW), fork.turned(Angle.ofDegrees(step)).cameraToEnu(NOW));
            // Westward is clockwise about the northern end.
            Vector3D expected = fork.northernEnd().scalarMultiply(-Math.toRadians(step));
            assertThat(Vector3D.distance(turn, expected)).isLessThan(1e-9);
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {54.6, -43.95})
    void tracking_turnsAtTheSiderealRate_driveOffDoesNot(double latitudeDeg) {
        SimulatedFork standing = fork(latitudeDeg, MISALIGNED, 20, -10);
        SimulatedFork tracking = standing.driven(Drive.TRACKING, NOW);

        Vector3D stood = turn(standing.cameraToEnu(NOW), standing.cameraToEnu(NOW.plusSeconds(600)));
        Vector3D tracked = turn(tracking.cameraToEnu(NOW), tracking.cameraToEnu(NOW.plusSeconds(600)));

        assertThat(stood.getNorm()).isZero();
        assertThat(Vector3D.distance(tracked, tracking.northernEnd().scalarMultiply(-SIDEREAL * 600)))
                .isLessThan(1e-9);
    }

    /**
     * Camera-to-ENU quaternions (x, y, z, w) of one camera turned by −step, 0 and +step about the elevated end of an
     * axis, computed outside this project ({@code authorities/attitude}, cases 6 and 13; 12 decimals).
     */
    @ParameterizedTest
    @CsvSource({
        "-51.82, 0.200402482675,0.156093069563,-0.122563727778,0.959401861164,"
                + "0.161127531422,-0.043982476258,0.245675355201,0.954854481189,"
                + "0.093301837512,-0.236264615516,0.570382375215,0.781113144568,180.839166667,50.770500000,48.6",
        "48.0, -0.189320787905,-0.132267772610,-0.236935976337,0.943675907668,"
                + "-0.200700559957,-0.009352426679,-0.037627624706,0.978885069458,"
                + "-0.200800722592,0.114088536719,0.163795444044,0.959079729796,359.533333333,46.818666667,27.23"
    })
    void attitudes_agreeWithExternalValues(
            double latitudeDeg,
            double x1,
            double y1,
            double z1,
            double w1,
            double x2,
            double y2,
            double z2,
            double w2,
            double x3,
            double y3,
            double z3,
            double w3,
            double axisAzimuthDeg,
            double axisAltitudeDeg,
            double stepDeg) {
        AxisPointing axis = AxisPointing.of(Angle.ofDegrees(axisAzimuthDeg), Angle.ofDegrees(axisAltitudeDeg));
        Site site = Site.ofDegrees(latitudeDeg, 0, 0);
        Rotation middle = attitude(x2, y2, z2, w2);
        SimulatedFork fork = holding(axis.northernEnd(site), middle);
        // Counted about the elevated end, and westward about the northern one.
        Angle westward = Angle.ofDegrees(stepDeg * site.hemisphereSign());

        assertThat(Rotation.distance(fork.cameraToEnu(NOW), middle)).isLessThan(1e-9);
        assertThat(Rotation.distance(fork.turned(westward).cameraToEnu(NOW), attitude(x1, y1, z1, w1)))
                .isLessThan(1e-9);
        assertThat(Rotation.distance(fork.turned(westward.negated()).cameraToEnu(NOW), attitude(x3, y3, z3, w3)))
                .isLessThan(1e-9);
    }

    private static Rotation attitude(double x, double y, double z, double w) {
        return new CameraAttitude(NOW, x, y, z, w, RotationCovariance.ofSigmas(Angle.ZERO, Angle.ZERO)).cameraToEnu();
    }

    /** A fork whose camera has exactly this attitude: pointed at its boresight, then its camera rolled. */
    private static SimulatedFork holding(Vector3D northernEnd, Rotation attitude) {
        Vector3D front = attitude.applyTo(Vector3D.PLUS_K);
        Vector3D up = attitude.applyTo(Vector3D.MINUS_J);
        Vector3D east = northernEnd.crossProduct(front).normalize();
        Vector3D north = front.crossProduct(east);
        Angle roll = new Angle(Math.atan2(up.dotProduct(east), up.dotProduct(north)));
        Vector3D mountEast = northernEnd.crossProduct(Vector3D.PLUS_K).normalize();
        Vector3D meridian = mountEast.crossProduct(northernEnd);
        return new SimulatedFork(
                northernEnd,
                Vector3D.PLUS_K,
                TubeOnFork.SQUARE.withCameraRoll(roll),
                new Angle(-Math.atan2(front.dotProduct(mountEast), front.dotProduct(meridian))),
                new Angle(Math.asin(front.dotProduct(northernEnd))),
                Drive.STANDING,
                NOW);
    }

    @ParameterizedTest
    @ValueSource(doubles = {54.6, -43.95})
    void atHourAngleZero_theTubeIsOnTheMeridian_northUp_westRight(double latitudeDeg) {
        Site site = Site.ofDegrees(latitudeDeg, 0, 0);
        Vector3D pole = new Vector3D(0, site.latitude().cos(), site.latitude().sin());
        SimulatedFork fork = new SimulatedFork(
                pole, Vector3D.PLUS_K, TubeOnFork.SQUARE, Angle.ZERO, Angle.ofDegrees(10), Drive.STANDING, NOW);

        Rotation attitude = fork.cameraToEnu(NOW);

        // On the meridian at altitude 90° − |φ − δ|, on the equator's side.
        assertThat(Vector3D.distance(
                        attitude.applyTo(Vector3D.PLUS_K),
                        new Vector3D(
                                0,
                                -Math.sin(site.latitude().radians() - Math.toRadians(10)),
                                Math.cos(site.latitude().radians() - Math.toRadians(10)))))
                .isLessThan(1e-12);
        assertThat(Vector3D.distance(attitude.applyTo(Vector3D.PLUS_I), Vector3D.MINUS_I))
                .isLessThan(1e-12);
        // Three hours later by the circle, the tube is in the west.
        assertThat(fork.turned(Angle.ofHours(3))
                        .cameraToEnu(NOW)
                        .applyTo(Vector3D.PLUS_K)
                        .getX())
                .isLessThan(-0.6);
    }

    @Test
    void cameraRoll_isThePositionAngleOfUp() {
        SimulatedFork level = fork(54.6, TubeOnFork.SQUARE, 30, 20);
        SimulatedFork rolled = fork(54.6, TubeOnFork.SQUARE.withCameraRoll(Angle.ofDegrees(25)), 30, 20);
        Rotation square = level.cameraToEnu(NOW);

        Vector3D up = square.applyInverseTo(rolled.cameraToEnu(NOW).applyTo(Vector3D.MINUS_J));

        // In the axes of an unrolled camera north is −y, east −x.
        assertThat(Vector3D.distance(up, new Vector3D(-Math.sin(Math.toRadians(25)), -Math.cos(Math.toRadians(25)), 0)))
                .isLessThan(1e-12);
    }

    @Test
    void coneAndTilt_shiftTheTubeAsInTheReferenceSheet() {
        // Section (g): cone c east of the perpendicular shifts hour angle by −c / cos δ; a declination axis tilted by
        // ν with its east end to the north, by +ν tan δ. First order, at a minute of arc.
        double c = Math.toRadians(1 / 60.0);
        double declination = Math.toRadians(40);
        Vector3D pole = new Vector3D(0, Math.cos(0.9), Math.sin(0.9));
        TubeOnFork cone = new TubeOnFork(new Angle(c), Angle.ZERO, Angle.ZERO, Angle.ZERO);
        TubeOnFork lean = new TubeOnFork(Angle.ZERO, new Angle(c), Angle.ZERO, Angle.ZERO);

        assertThat(hourAngleOf(pole, cone, declination)).isCloseTo(-c / Math.cos(declination), within(c * 1e-3));
        assertThat(hourAngleOf(pole, lean, declination)).isCloseTo(c * Math.tan(declination), within(c * 1e-3));
    }

    private static double hourAngleOf(Vector3D pole, TubeOnFork tube, double declinationRad) {
        SimulatedFork fork = new SimulatedFork(
                pole, Vector3D.PLUS_K, tube, Angle.ZERO, new Angle(declinationRad), Drive.STANDING, NOW);
        Vector3D front = fork.cameraToEnu(NOW).applyTo(Vector3D.PLUS_K);
        Vector3D upper = Vector3D.PLUS_I.crossProduct(pole);
        return Math.atan2(-front.getX(), front.dotProduct(upper));
    }

    @Test
    void sag_lowersTheTubeByTheCosineOfAltitude_andBreaksTheSingleAxis() {
        TubeOnFork sagging = MISALIGNED.withSag(Angle.ofArcminutes(3));
        SimulatedFork stiff = fork(54.6, MISALIGNED, -60, 30);
        SimulatedFork soft = fork(54.6, sagging, -60, 30);
        Vector3D was = stiff.cameraToEnu(NOW).applyTo(Vector3D.PLUS_K);
        Vector3D is = soft.cameraToEnu(NOW).applyTo(Vector3D.PLUS_K);

        double altitude = Math.asin(was.getZ());
        assertThat(altitude - Math.asin(is.getZ()))
                .isCloseTo(Math.toRadians(3 / 60.0) * Math.cos(altitude), within(1e-7));
        Vector3D turn =
                turn(soft.cameraToEnu(NOW), soft.turned(Angle.ofDegrees(60)).cameraToEnu(NOW));
        assertThat(Vector3D.angle(turn.negate(), soft.northernEnd())).isGreaterThan(Math.toRadians(0.2 / 60));
    }

    @Test
    void turningTheScrews_movesTheCamera() {
        // About the base's own vertical, and about a hinge perpendicular to it: the effect of the screws, and nothing
        // else.
        HiddenWedge before = wedge(54.6, AxisOffset.ofArcminutes(60, 30));
        HiddenWedge after = before.turned(0.7, 0, new Random(2));
        SimulatedFork fork =
                SimulatedFork.on(before, MISALIGNED, NOW).pointed(Angle.ofDegrees(40), Angle.ofDegrees(50), NOW);

        Vector3D turn = turn(fork.cameraToEnu(NOW), fork.onWedge(after).cameraToEnu(NOW));

        assertThat(Vector3D.angle(turn.negate(), before.azimuthAxis())).isLessThan(1e-6);
        HiddenWedge raised = before.turned(0, 0.7, new Random(2));
        Vector3D lift = turn(fork.cameraToEnu(NOW), fork.onWedge(raised).cameraToEnu(NOW));
        Vector3D hinge = before.axis().crossProduct(before.azimuthAxis()).normalize();
        assertThat(Vector3D.angle(lift, hinge)).isLessThan(1e-6);
    }

    @Test
    void periodicError_swingsBothWays_andReturnsEveryPeriod() {
        Drive worm = Drive.trackingWith(Angle.ofArcseconds(12), Duration.ofMinutes(8));
        SimulatedFork fork = fork(54.6, TubeOnFork.SQUARE, 0, 0).driven(worm, NOW);
        double least = 0;
        double most = 0;
        for (int second = 0; second <= 480; second += 4) {
            double ahead = fork.hourAngleAt(NOW.plusSeconds(second)).radians()
                    - fork.hourAngleAt(NOW).radians()
                    - SIDEREAL * second;
            least = Math.min(least, ahead);
            most = Math.max(most, ahead);
        }

        assertThat(new Angle(most - least).arcseconds()).isCloseTo(24, within(0.1));
        assertThat(fork.hourAngleAt(NOW.plusSeconds(480))
                        .minus(fork.hourAngleAt(NOW))
                        .radians())
                .isCloseTo(SIDEREAL * 480, within(1e-12));
    }

    @Test
    void perfectForkPointedAtAStar_isOnTheStar() {
        Site site = Site.ofDegrees(54.6, -2.9, 240);
        ObservingMoment moment = ObservingMoment.of(site, SkyTime.of(NOW), Weather.standardAt(240));
        CatalogueStar star = CatalogueStar.fixed(Angle.ofDegrees(310), Angle.ofDegrees(45));

        SimulatedFork fork = SimulatedFork.on(wedge(54.6, AxisOffset.ofArcminutes(40, 10)), TubeOnFork.SQUARE, NOW)
                .pointed(star, moment);

        assertThat(Vector3D.angle(
                        fork.cameraToEnu(NOW).applyTo(Vector3D.PLUS_K),
                        moment.refracted(moment.apparent(star)).enu()))
                .isLessThan(1e-12);
    }
}
