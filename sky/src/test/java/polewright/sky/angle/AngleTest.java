package polewright.sky.angle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class AngleTest {
    static DoubleStream manyDegrees() {
        var random = new SplittableRandom(360);
        return DoubleStream.generate(() -> random.nextDouble(-2000, 2000)).limit(200);
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "360, 0", "-360, 0", "720, 0", "361, 1", "-1, 359", "-361, 359", "180, 180", "-180, 180"})
    void positiveWrapLiesBetweenZeroAndOneTurn(double degrees, double expected) {
        assertThat(Angle.ofDegrees(degrees).wrappedPositive().degrees()).isCloseTo(expected, within(1e-11));
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "180, -180", "-180, -180", "181, -179", "-181, 179", "360, 0", "540, -180", "179, 179"})
    void signedWrapLiesBetweenMinusHalfAndHalfATurn(double degrees, double expected) {
        assertThat(Angle.ofDegrees(degrees).wrappedSigned().degrees()).isCloseTo(expected, within(1e-11));
    }

    @Test
    void tinyNegativeAngleDoesNotWrapToAWholeTurn() {
        assertThat(new Angle(-1e-20).wrappedPositive().radians()).isZero();
    }

    @Test
    void tinyNegativeAngleStaysTinyWhenWrappedSigned() {
        assertThat(new Angle(-1e-20).wrappedSigned().radians()).isCloseTo(0, within(1e-15));
    }

    @ParameterizedTest
    @MethodSource("manyDegrees")
    void wrappingKeepsTheDirection(double degrees) {
        Angle angle = Angle.ofDegrees(degrees);
        Angle positive = angle.wrappedPositive();
        Angle signed = angle.wrappedSigned();
        assertThat(positive.degrees()).isBetween(0.0, Math.nextDown(360.0));
        assertThat(signed.degrees()).isBetween(-180.0, Math.nextDown(180.0));
        assertThat(positive.sin()).isCloseTo(angle.sin(), within(1e-13));
        assertThat(signed.cos()).isCloseTo(angle.cos(), within(1e-13));
    }

    @ParameterizedTest
    @MethodSource("manyDegrees")
    void everyUnitRoundTrips(double value) {
        assertThat(Angle.ofDegrees(value).degrees()).isCloseTo(value, within(1e-12 * 2000));
        assertThat(Angle.ofHours(value).hours()).isCloseTo(value, within(1e-12 * 2000));
        assertThat(Angle.ofArcminutes(value).arcminutes()).isCloseTo(value, within(1e-12 * 2000));
        assertThat(Angle.ofArcseconds(value).arcseconds()).isCloseTo(value, within(1e-12 * 2000));
    }

    @Test
    void anHourIsFifteenDegrees() {
        assertThat(Angle.ofHours(1).degrees()).isCloseTo(15, within(1e-13));
    }

    @Test
    void aDegreeIsSixtyArcminutesAndThirtySixHundredArcseconds() {
        assertThat(Angle.ofDegrees(1).arcminutes()).isCloseTo(60, within(1e-12));
        assertThat(Angle.ofDegrees(1).arcseconds()).isCloseTo(3600, within(1e-10));
    }
}
