package polewright.alignment.sighting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
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
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

class StarTrailTest {
    private static final Instant EVENING = Instant.parse("2026-01-15T20:00:00Z");
    private static final Angle ONE_DEGREE = Angle.ofDegrees(1);
    private static final double STEP_RAD = 1e-6;

    /** A star that is at this hour angle and declination then. */
    private static FixedStar star(Site site, double hourAngleDeg, double declinationDeg) {
        Angle sidereal =
                ObservingMoment.of(site, SkyTime.of(EVENING), weather(site)).siderealTime();
        return new FixedStar(
                "a star",
                CatalogueStar.fixed(
                        sidereal.minus(Angle.ofDegrees(hourAngleDeg)).wrappedPositive(),
                        Angle.ofDegrees(declinationDeg)));
    }

    private static Weather weather(Site site) {
        return Weather.standardAt(site.heightMetres());
    }

    /** The reading with which the sighting would fit this axis exactly. */
    private static Angle reading(Site site, FixedStar star, AxisOffset offset) {
        StarTrail straight = new StarTrail(EVENING, star, Angle.ZERO, ONE_DEGREE);
        double sigmas = straight.model(site, weather(site))
                .residual(AxisPointing.of(site, offset).elevatedEnd())[0];
        return ONE_DEGREE.times(sigmas);
    }

    /**
     * Common practice, as with a drift: near the meridian a star shows whether the axis points too far east, in the east
     * or west whether it points too high. An axis that is off toward the east of the star tilts the path to the north.
     */
    @ParameterizedTest
    @CsvSource({"54.6, 0, 0, 60, 0", "-43.95, 0, 0, 60, 0", "54.6, 90, 30, 0, 60", "-43.95, 90, -30, 0, 60"})
    void starNearMeridianShowsAzimuth_starInTheWestShowsAltitude(
            double latitude, double hourAngle, double declination, double eastArcmin, double upArcmin) {
        Site site = Site.ofDegrees(latitude, -2.9, 240);
        FixedStar star = star(site, hourAngle, declination);
        Angle shown = reading(site, star, AxisOffset.ofArcminutes(eastArcmin, upArcmin));
        double expected = 1 / Math.cos(Math.toRadians(declination)) * site.hemisphereSign();
        assertThat(shown.degrees()).isCloseTo(expected, within(0.03));
        Angle across = reading(site, star, AxisOffset.ofArcminutes(upArcmin, eastArcmin));
        assertThat(Math.abs(across.degrees())).isLessThan(0.05);
    }

    /** By exact rotations: the sky about its pole, and the star in the field about the axis when the tube swings. */
    @ParameterizedTest
    @ValueSource(doubles = {54.6, -43.95, 10, -65})
    void reading_isTheAngleBetweenTwoRotations(double latitude) {
        Site site = Site.ofDegrees(latitude, -2.9, 240);
        Random random = new Random(17);
        Vector3D pole = new Vector3D(0, site.latitude().cos(), site.latitude().sin());
        for (int i = 0; i < 50; i++) {
            AxisOffset offset = AxisOffset.ofArcminutes(300 * random.nextGaussian(), 300 * random.nextGaussian());
            FixedStar star =
                    star(site, 40 * random.nextGaussian(), site.hemisphereSign() * (20 + 50 * random.nextDouble()));
            ObservingMoment moment = ObservingMoment.of(site, SkyTime.of(EVENING), weather(site));
            Vector3D seen = Sighted.direction(star, moment).enu();
            Vector3D axis = AxisPointing.of(site, offset).elevatedEnd().scalarMultiply(site.hemisphereSign());
            Vector3D trail = moved(seen, pole);
            Vector3D path = moved(seen, axis);
            double sense = trail.crossProduct(path).dotProduct(seen);
            // From inside the sphere, west to north is a turn to the right about the line of sight.
            double turned = Math.copySign(Vector3D.angle(trail, path), -sense);
            assertThat(reading(site, star, offset).radians()).isCloseTo(turned, within(1e-5));
        }
    }

    /** The motion of a star about a pole toward the west. */
    private static Vector3D moved(Vector3D star, Vector3D northPole) {
        return new Rotation(northPole, -STEP_RAD, RotationConvention.VECTOR_OPERATOR)
                .applyTo(star)
                .subtract(star);
    }

    @Test
    void twoTrails_giveTheAxis() {
        Site site = Site.ofDegrees(54.6, -2.9, 240);
        FixedStar south = star(site, 0, 20);
        FixedStar west = star(site, 80, 40);
        AxisOffset offset = AxisOffset.ofArcminutes(80, -50);
        Angle atSouth = reading(site, south, offset);
        Angle atWest = reading(site, west, offset);
        StarTrail first = new StarTrail(EVENING, south, atSouth, ONE_DEGREE);
        StarTrail second = new StarTrail(EVENING, west, atWest, ONE_DEGREE);
        for (AxisOffset other : new AxisOffset[] {offset, AxisOffset.NONE, AxisOffset.ofArcminutes(80, 50)}) {
            Vector3D axis = AxisPointing.of(site, other).elevatedEnd();
            double off = Math.abs(first.model(site, weather(site)).residual(axis)[0])
                    + Math.abs(second.model(site, weather(site)).residual(axis)[0]);
            assertThat(off < 1e-9).isEqualTo(other.equals(offset));
        }
    }

    @Test
    void sunPoleAndWildAngles_areRefused() {
        Site site = Site.ofDegrees(54.6, -2.9, 240);
        assertThatThrownBy(() -> new StarTrail(EVENING, SolarSystemBody.SUN, Angle.ZERO, ONE_DEGREE))
                .isInstanceOf(InputRefused.class)
                .hasMessageContaining("never point the tube at the Sun");
        assertThatThrownBy(() -> new StarTrail(EVENING, star(site, 0, 20), Angle.ofDegrees(61), ONE_DEGREE))
                .isInstanceOf(InputRefused.class)
                .hasMessageContaining("beyond 60");
        StarTrail polar = new StarTrail(EVENING, star(site, 0, 89), Angle.ZERO, ONE_DEGREE);
        assertThatThrownBy(() -> polar.model(site, weather(site)))
                .isInstanceOf(InputRefused.class)
                .hasMessageContaining("within 3 degrees of the pole");
    }

    @Test
    void swappedSides_areTheFirstMistakeTried() {
        StarTrail read = new StarTrail(EVENING, star(Site.ofDegrees(54.6, -2.9, 240), 0, 20), ONE_DEGREE, ONE_DEGREE);
        assertThat(read.misreadings())
                .singleElement()
                .satisfies(mistake -> assertThat(
                                ((StarTrail) mistake.meant()).towardNorth().degrees())
                        .isEqualTo(-1));
    }
}
