package polewright.sky.attitude;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import polewright.sky.angle.Angle;

class CameraAttitudeTest {
    private static final Instant AT = Instant.parse("2026-11-25T20:00:00Z");
    private static final RotationCovariance GOOD =
            RotationCovariance.ofSigmas(Angle.ofArcseconds(1), Angle.ofArcseconds(30));

    @Test
    void tabulatedQuaternion_rotatesVectorsActively() {
        // Row 6 of attitude_public.csv (project reference): camera-to-ENU (x, y, z, w) whose boresight is 20° from an
        // axis at azimuth 180.839166667, altitude 50.7705.
        var camera = new CameraAttitude(AT, 0.200402482675, 0.156093069563, -0.122563727778, 0.959401861164, GOOD);
        double az = Math.toRadians(180.839166667);
        double alt = Math.toRadians(50.770500000);
        var axis = new Vector3D(Math.cos(alt) * Math.sin(az), Math.cos(alt) * Math.cos(az), Math.sin(alt));
        assertThat(Math.toDegrees(Vector3D.angle(axis, camera.boresight()))).isCloseTo(20, within(1e-6));
    }

    @Test
    void quarterTurnAboutUp_takesEastToNorth() {
        var camera = new CameraAttitude(AT, 0, 0, Math.sqrt(0.5), Math.sqrt(0.5), GOOD);
        assertThat(camera.cameraToEnu().applyTo(Vector3D.PLUS_I).distance(Vector3D.PLUS_J))
                .isLessThan(1e-12);
    }

    @Test
    void turnedSince_returnsTheRotationApplied() {
        var first = new CameraAttitude(AT, 0.5, 0.5, 0.5, 0.5, GOOD);
        var about = new Vector3D(0.2, 0.7, 0.9).normalize();
        var second = first.turnedBy(new Rotation(about, Math.toRadians(37), RotationConvention.VECTOR_OPERATOR));
        assertThat(second.turnedSince(first).distance(about.scalarMultiply(Math.toRadians(37))))
                .isLessThan(1e-12);
    }

    @Test
    void rotationRoundTripsThroughItsQuaternion() {
        var turn = new Rotation(new Vector3D(1, 2, 3), 1.1, RotationConvention.VECTOR_OPERATOR);
        var back = CameraAttitude.of(AT, turn, GOOD).cameraToEnu();
        assertThat(Rotation.distance(turn, back)).isLessThan(1e-14);
    }

    @Test
    void varianceAboutTheBoresightIsThatOfRoll() {
        assertThat(GOOD.varianceAboutArcsec2(Vector3D.PLUS_K)).isEqualTo(900);
        assertThat(GOOD.centreSigma().arcseconds()).isCloseTo(1, within(1e-12));
        assertThat(GOOD.rollSigma().arcseconds()).isCloseTo(30, within(1e-12));
        assertThat(GOOD.covarianceArcsec2(Vector3D.PLUS_I, Vector3D.PLUS_J)).isZero();
    }
}
