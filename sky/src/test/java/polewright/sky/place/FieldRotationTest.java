package polewright.sky.place;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.sky.angle.Angle;

class FieldRotationTest {
    private static final double HOURS = 1 / 3600.0;

    /** Parallactic angle q = atan2(cos φ sin h, sin φ cos δ − cos φ sin δ cos h), as computed outside this project. */
    private static double parallacticAngleRad(double latitude, double dec, double hourAngle) {
        return Math.atan2(
                Math.cos(latitude) * Math.sin(hourAngle),
                Math.sin(latitude) * Math.cos(dec) - Math.cos(latitude) * Math.sin(dec) * Math.cos(hourAngle));
    }

    @ParameterizedTest
    @CsvSource({"54.6, 20, -50", "54.6, 80, 170", "-43.95, -60, 30", "-43.95, 10, 40", "20, 5, 1", "10, -20, -30"})
    void rate_isThatOfTheParallacticAngle_inBothHemispheres(double latDeg, double decDeg, double hourAngleDeg) {
        double latitude = Math.toRadians(latDeg);
        double dec = Math.toRadians(decDeg);
        double half = Math.toRadians(15.0411 * HOURS / 2);
        double hourAngle = Math.toRadians(hourAngleDeg);
        double turned = parallacticAngleRad(latitude, dec, hourAngle + half)
                - parallacticAngleRad(latitude, dec, hourAngle - half);
        AirlessDirection direction = direction(latitude, dec, hourAngle);

        double rate =
                FieldRotation.perHour(Site.ofDegrees(latDeg, 0, 0), direction).degrees();

        double expected = Math.toDegrees(new Angle(turned).wrappedSigned().radians()) / HOURS;
        assertThat(rate).isCloseTo(expected, within(1e-5 * (1 + Math.abs(expected))));
    }

    /** The handbook form, 15.0411°/h · cos φ |cos A| / cos a; largest on the meridian, zero due east and west. */
    @Test
    void rate_isZeroDueEastAndWest_andCosLatitudeOverCosAltitudeOnTheMeridian() {
        Site site = Site.ofDegrees(54.6, -2.9, 240);
        for (double azimuthDeg : new double[] {90, 270}) {
            assertThat(FieldRotation.perHour(
                                    site, AirlessDirection.of(Angle.ofDegrees(azimuthDeg), Angle.ofDegrees(40)))
                            .degrees())
                    .isCloseTo(0, within(1e-12));
        }
        assertThat(FieldRotation.perHour(site, AirlessDirection.of(Angle.HALF_TURN, Angle.ofDegrees(60)))
                        .degrees())
                .isCloseTo(15.0411 * Math.cos(Math.toRadians(54.6)) / 0.5, within(1e-3));
    }

    private static AirlessDirection direction(double latitude, double dec, double hourAngle) {
        double up = Math.sin(latitude) * Math.sin(dec) + Math.cos(latitude) * Math.cos(dec) * Math.cos(hourAngle);
        double north = Math.cos(latitude) * Math.sin(dec) - Math.sin(latitude) * Math.cos(dec) * Math.cos(hourAngle);
        double east = -Math.cos(dec) * Math.sin(hourAngle);
        return AirlessDirection.of(new Angle(Math.atan2(east, north)), new Angle(Math.asin(up)));
    }
}
