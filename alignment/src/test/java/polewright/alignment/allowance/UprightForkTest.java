package polewright.alignment.allowance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.mount.AxisOffset;
import polewright.sky.angle.Angle;
import polewright.sky.place.AirlessDirection;
import polewright.sky.place.FieldRotation;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * A fork without a wedge is a mount whose axis points at the zenith: guided on a star, its field rotates at the
 * handbook rate for altitude and azimuth, {@link FieldRotation}.
 */
class UprightForkTest {
    private static final double SECONDS = 60;
    private static final double CORNER_DEG = 0.1;

    @ParameterizedTest
    @CsvSource({
        "54.6, 20, -50",
        "54.6, 80, 170",
        "54.6, -5, 30",
        "-43.95, -60, 30",
        "-43.95, 10, 40",
        "-43.95, -20, -70",
        "20, 5, 10"
    })
    void guidedField_rotatesAtTheAltazimuthRate(double latDeg, double decDeg, double hourAngleDeg) {
        Site site = Site.ofDegrees(latDeg, 0, 0);
        ApparentSky sky = new ApparentSky(site, Weather.AIRLESS);
        CandidateAxis zenith = new CandidateAxis(AxisOffset.NONE, Vector3D.PLUS_K);
        Vector3D middle = sky.airless(Math.toRadians(hourAngleDeg), Math.toRadians(decDeg));
        Vector3D star = sky.later(middle, -SECONDS / 2);
        // Directly above the star in the tube's frame, because the altitude axis is perpendicular to both.
        Vector3D above = RodriguesRotation.about(zenith.east(star), star, -Math.toRadians(CORNER_DEG));
        GuidedMotion motion = new GuidedMotion(star, star, sky.later(star, SECONDS), above, sky.later(above, SECONDS));

        Vector2D moved = motion.shift(zenith);

        // A point above the star moves toward the mount's east as the vertical rotates relative to the stars.
        double turnedDeg = Math.toDegrees(moved.getX() / (CORNER_DEG * 3600));
        AirlessDirection direction = AirlessDirection.of(
                new Angle(Math.atan2(middle.getX(), middle.getY())), new Angle(Math.asin(middle.getZ())));
        double expectedDeg = -FieldRotation.perHour(site, direction).degrees() * SECONDS / 3600;
        assertThat(turnedDeg).isCloseTo(expectedDeg, within(0.005 * Math.abs(expectedDeg)));
        // It rotates about the star: nothing moves toward it.
        assertThat(moved.getY()).isCloseTo(0, within(0.01 * Math.abs(moved.getX()) + 1e-3));
    }
}
