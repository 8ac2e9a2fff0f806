package polewright.alignment.sighting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** Drifts by exact rotations: the sky rotates about its pole, the tube and its reticle about the mount's axis. */
class DriftModelTest {
    private static final double SECONDS = 600;
    // A sidereal day of 86164.0905 s (handbook).
    private static final double TURN_RAD = 2 * Math.PI * SECONDS / 86164.0905;
    private static final double SIGMA_RAD = Angle.ofArcseconds(1).radians();

    private final Random random = new Random(3);

    private record Watched(Site site, Vector3D axis, Vector3D start, Vector3D end, double north, double across) {
        DriftModel told(double northward, ReticleNorth by) {
            return DriftModel.of(site, start, end, SECONDS, northward, SIGMA_RAD, by);
        }
    }

    /**
     * For a random axis up to some degrees off and a random star; the reticle's line is on the sky's or the mount's
     * north.
     */
    private Watched watched(double latitudeDeg, double offDeg, boolean bySky) {
        Site site = Site.ofDegrees(latitudeDeg, 0, 100);
        double way = 2 * Math.PI * random.nextDouble();
        Vector3D axis = AxisPointing.of(
                        site, AxisOffset.ofArcminutes(60 * offDeg * Math.cos(way), 60 * offDeg * Math.sin(way)))
                .elevatedEnd();
        Vector3D pole = new Vector3D(0, site.latitude().cos(), site.latitude().sin());
        Vector3D mountNorth = axis.scalarMultiply(site.hemisphereSign());
        Vector3D start;
        do {
            start = new Vector3D(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).normalize();
        } while (Math.abs(start.dotProduct(pole)) > 0.87);
        Vector3D end = new Rotation(pole, -TURN_RAD, RotationConvention.VECTOR_OPERATOR).applyTo(start);
        Vector3D toward = bySky ? pole : mountNorth;
        Vector3D line =
                toward.subtract(start.scalarMultiply(toward.dotProduct(start))).normalize();
        Rotation drive = new Rotation(mountNorth, -TURN_RAD, RotationConvention.VECTOR_OPERATOR);
        Vector3D middle = drive.applyTo(start);
        Vector3D north = drive.applyTo(line);
        Vector3D east = north.crossProduct(middle);
        return new Watched(
                site,
                axis,
                start,
                end,
                Math.atan2(end.dotProduct(north), end.dotProduct(middle)),
                end.dotProduct(east));
    }

    @ParameterizedTest
    @ValueSource(doubles = {54.6, 5, -43.95})
    void alongTheSkysNorth_isExactAtAnyOffset(double latitude) {
        for (int i = 0; i < 300; i++) {
            Watched seen = watched(latitude, 10 * random.nextDouble(), true);
            double[] residual = seen.told(seen.north(), ReticleNorth.SKY).residual(seen.axis());
            assertThat(residual[0] * SIGMA_RAD).isCloseTo(0, within(1e-12));
        }
    }

    /**
     * Along the mount's north the angle in the view is the change of declination, up to the square of the other drift.
     */
    @Test
    void alongTheMountsNorth_isTheChangeOfDeclination() {
        for (int i = 0; i < 300; i++) {
            Watched seen = watched(54.6, 3 * random.nextDouble(), false);
            double[] residual = seen.told(seen.north(), ReticleNorth.MOUNT).residual(seen.axis());
            double declination = Math.abs(Math.asin(seen.axis().dotProduct(seen.start())));
            double bend = seen.across() * seen.across() * (1 + Math.tan(declination)) + 1e-9;
            assertThat(residual[0] * SIGMA_RAD).isCloseTo(0, within(bend));
        }
    }

    /**
     * The difference is second order: a hundredth of an arcsecond within some arcminutes, tens of arcseconds at four
     * degrees.
     */
    @Test
    void atThePole_bothReadingsAgree() {
        for (int i = 0; i < 100; i++) {
            Watched near = watched(54.6, 0.05, true);
            assertThat(near.told(0, ReticleNorth.NOT_TOLD).sigmasBetweenReadings(near.axis()))
                    .isLessThan(0.15);
        }
    }

    @Test
    void ifUnknown_bothReadingsAreAboutOneSigmaOff() {
        for (int i = 0; i < 100; i++) {
            for (boolean bySky : new boolean[] {true, false}) {
                Watched seen = watched(54.6, 4, bySky);
                double residual = seen.told(seen.north(), ReticleNorth.NOT_TOLD).residual(seen.axis())[0];
                assertThat(Math.abs(residual)).isLessThan(1.5);
            }
        }
    }
}
