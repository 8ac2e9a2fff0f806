package polewright.mount;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Objects;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvFileSource;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** The axis of a camera's rotation from its attitudes: the project's reference table. */
class AttitudeTableTest {
    // The quaternions have twelve decimals and the angles nine.
    private static final double ARCMIN = 1e-5;

    @ParameterizedTest
    @CsvFileSource(resources = "/authorities/attitude/attitude_public.csv", numLinesToSkip = 1)
    void rotationBetweenFrames_hasTheAxisOfTheTable(ArgumentsAccessor row) {
        Site site = Site.ofDegrees(figure(row, 1), 0, 0);
        double stepDeg = figure(row, 19);
        Rotation first = cameraToEnu(row, 2);
        Rotation second = cameraToEnu(row, 6);
        Rotation third = cameraToEnu(row, 10);

        assertAxis(row, site, between(first, second), stepDeg);
        assertAxis(row, site, between(second, third), stepDeg);
        assertAxis(row, site, between(first, third), 2 * stepDeg);
    }

    private static void assertAxis(ArgumentsAccessor row, Site site, Rotation turn, double angleDeg) {
        Vector3D about = turn.getAxis(RotationConvention.VECTOR_OPERATOR);
        AxisPointing axis = new AxisPointing(about.getZ() > 0 ? about : about.negate());
        assertThat(Math.toDegrees(turn.getAngle())).isCloseTo(angleDeg, within(1e-6));
        assertThat(axis.azimuth()
                        .minus(Angle.ofDegrees(figure(row, 14)))
                        .wrappedSigned()
                        .arcminutes())
                .isCloseTo(0, within(ARCMIN));
        assertThat(axis.altitude().degrees()).isCloseTo(figure(row, 15), within(ARCMIN / 60));
        assertThat(axis.azimuthError(site).arcminutes()).isCloseTo(figure(row, 16), within(ARCMIN));
        assertThat(axis.altitudeError(site).arcminutes()).isCloseTo(figure(row, 17), within(ARCMIN));
    }

    private static Rotation between(Rotation earlier, Rotation later) {
        return later.compose(earlier.revert(), RotationConvention.VECTOR_OPERATOR);
    }

    private static double figure(ArgumentsAccessor row, int column) {
        return Objects.requireNonNull(row.getDouble(column));
    }

    // The library's quaternions rotate frames; those of the table rotate vectors.
    private static Rotation cameraToEnu(ArgumentsAccessor row, int x) {
        return new Rotation(figure(row, x + 3), -figure(row, x), -figure(row, x + 1), -figure(row, x + 2), true);
    }
}
