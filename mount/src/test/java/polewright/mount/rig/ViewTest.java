package polewright.mount.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import polewright.mount.AxisPointing;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

class ViewTest {
    private static final double POLAR_DISTANCE_RAD = Math.toRadians(37.73 / 60);

    /**
     * Computed outside this project: offsets (right, up) of a star at polar distance d and hour angle HA from the pole,
     * as factors of (d sin HA, d cos HA). The star's direction comes from the exact formula of section 0.
     */
    @ParameterizedTest
    @CsvSource({
        "54.60,  ERECT,    -1,  1",
        "54.60,  INVERTED,  1, -1",
        "54.60,  MIRRORED,  1,  1",
        "-43.95, ERECT,     1,  1",
        "-43.95, INVERTED, -1, -1",
        "-43.95, MIRRORED, -1,  1",
    })
    void starNearThePole_isWhereTheTableHasIt(
            double latitude, Orientation orientation, double sineFactor, double cosineFactor) {
        Site site = Site.ofDegrees(latitude, 0, 0);
        for (int hours = 0; hours < 24; hours++) {
            double hourAngle = Math.toRadians(15 * hours);

            Vector2D seen = View.of(orientation).fromSky(facingPole(site, hourAngle));

            double d = Math.sin(POLAR_DISTANCE_RAD);
            assertThat(seen.getX()).isEqualTo(sineFactor * d * Math.sin(hourAngle), within(1e-14));
            assertThat(seen.getY()).isEqualTo(cosineFactor * d * Math.cos(hourAngle), within(1e-14));
        }
    }

    /**
     * Computed outside this project: anticlockwise (north) and clockwise (south), the opposite when mirror-reversed.
     */
    @ParameterizedTest
    @CsvSource({
        "54.60,  ERECT,     1",
        "54.60,  INVERTED,  1",
        "54.60,  MIRRORED, -1",
        "-43.95, ERECT,    -1",
        "-43.95, INVERTED, -1",
        "-43.95, MIRRORED,  1",
    })
    void starsRotateAboutThePole(double latitude, Orientation orientation, int anticlockwise) {
        Site site = Site.ofDegrees(latitude, 0, 0);
        Vector2D before = View.of(orientation).fromSky(facingPole(site, 1.0));
        Vector2D after = View.of(orientation).fromSky(facingPole(site, 1.1));

        double turn = before.getX() * after.getY() - before.getY() * after.getX();

        assertThat(Math.signum(turn)).isEqualTo(anticlockwise);
    }

    @ParameterizedTest
    @EnumSource(Orientation.class)
    void toSky_invertsFromSky_forAnyRotation(Orientation orientation) {
        Random random = new Random(31);
        for (int i = 0; i < 100; i++) {
            View view = new View(orientation, Angle.ofDegrees(720 * random.nextDouble() - 360));
            Vector2D sky = new Vector2D(random.nextGaussian(), random.nextGaussian());

            assertThat(view.toSky(view.fromSky(sky)).distance(sky)).isLessThan(1e-14);
            assertThat(view.fromSky(view.toSky(sky)).distance(sky)).isLessThan(1e-14);
            assertThat(view.fromSky(sky).getNorm()).isEqualTo(sky.getNorm(), within(1e-14));
        }
    }

    /** Common practice: a diagonal turned a quarter to the right puts the zenith side at 3 o'clock. */
    @ParameterizedTest
    @CsvSource({
        "ERECT,    1, 0, 0, -1",
        "MIRRORED, 1, 0, 0, 1",
        "INVERTED, -1, 0, 0, 1",
    })
    void viewRotatedAQuarterClockwise_rotatesZenithAndRight(
            Orientation orientation, double zenithX, double zenithY, double rightX, double rightY) {
        View view = new View(orientation, Angle.QUARTER_TURN);

        Vector2D zenithSide = view.fromSky(new Vector2D(0, 1));
        Vector2D rightSide = view.fromSky(new Vector2D(1, 0));

        assertThat(zenithSide.distance(new Vector2D(zenithX, zenithY))).isLessThan(1e-15);
        assertThat(rightSide.distance(new Vector2D(rightX, rightY))).isLessThan(1e-15);
    }

    @Test
    void inverted_isErectRotatedByHalfATurn() {
        Vector2D sky = new Vector2D(0.3, -0.8);

        Vector2D turned = new View(Orientation.ERECT, Angle.HALF_TURN).fromSky(sky);

        assertThat(turned.distance(View.of(Orientation.INVERTED).fromSky(sky))).isLessThan(1e-15);
    }

    @Test
    void nakedEye_leavesTheSkyUnchanged() {
        assertThat(View.NAKED_EYE.fromSky(new Vector2D(0.3, -0.8))).isEqualTo(new Vector2D(0.3, -0.8));
    }

    /** (right, up) of the star by exact geometry, for an observer facing the elevated pole. */
    private static Vector2D facingPole(Site site, double hourAngle) {
        double phi = site.latitude().radians();
        double dec = site.hemisphereSign() * (Math.PI / 2 - POLAR_DISTANCE_RAD);
        Vector3D star = new Vector3D(
                -Math.cos(dec) * Math.sin(hourAngle),
                Math.cos(phi) * Math.sin(dec) - Math.sin(phi) * Math.cos(dec) * Math.cos(hourAngle),
                Math.sin(phi) * Math.sin(dec) + Math.cos(phi) * Math.cos(dec) * Math.cos(hourAngle));
        // Facing north, east is on the right; facing south, west is.
        Vector3D right = Vector3D.PLUS_I.scalarMultiply(site.hemisphereSign());
        return new Vector2D(star.dotProduct(right), star.dotProduct(AxisPointing.upDirection(site)));
    }
}
