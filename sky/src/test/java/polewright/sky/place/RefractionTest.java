package polewright.sky.place;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.jastronomy.jsofa.JSOFA;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.sky.AuthorityTable;
import polewright.sky.angle.Angle;

@Tag("slow")
class RefractionTest {
    private static final Refraction MEAN_DRY_AIR = new Refraction(new Weather(1010, 10, 0));

    static Stream<Weather> airs() {
        return Stream.of(
                new Weather(1010, 10, 0),
                new Weather(1085, -50, 0),
                new Weather(1040, 45, 1),
                new Weather(620, -10, 0.3),
                Weather.standardAt(240),
                Weather.AIRLESS);
    }

    static Stream<Arguments> airsAndAltitudes() {
        var random = new SplittableRandom(90);
        return airs().flatMap(air -> DoubleStream.concat(
                        DoubleStream.of(-1, 0, 3, 8, 90),
                        DoubleStream.generate(() -> random.nextDouble(-1, 90)).limit(60))
                .mapToObj(altitude -> Arguments.of(air, altitude)));
    }

    /** SOFA test program, t_refco: a check of the library, whose constants are used unchanged. */
    @Test
    void sofaRefcoConstants() {
        var constants = JSOFA.jauRefco(800, 10, 0.9, 0.4);
        assertThat(constants.a).isCloseTo(AuthorityTable.published("sofa_refco_a"), within(1e-15));
        assertThat(constants.b).isCloseTo(AuthorityTable.published("sofa_refco_b"), within(1e-18));
    }

    /**
     * Lift of the pole by latitude with ERFA's refco at 1010 hPa, 10 °C, dry, 0.55 µm, computed outside the project.
     */
    @ParameterizedTest
    @CsvSource({
        "10, 315",
        "15, 213",
        "20, 158",
        "25, 124",
        "30, 100",
        "35, 82.7",
        "40, 69.0",
        "45, 58.0",
        "50, 48.7",
        "55, 40.6",
        "60, 33.5",
        "65, 27.1",
        "70, 21.1"
    })
    void refractionAtThePoleAgreesWithTheTable(double latitude, double arcsec) {
        assertThat(MEAN_DRY_AIR.lift(Angle.ofDegrees(latitude)).arcseconds())
                .isCloseTo(arcsec, within(arcsec > 99 ? 0.7 : 0.1));
    }

    /** The handbook's curve (Sæmundsson, in Meeus ch. 16) is about 5 % higher at middle altitudes; same table. */
    @ParameterizedTest
    @CsvSource({"10, 325", "20, 165", "30, 105", "45, 60.8", "60, 35.1", "70, 22.1"})
    void theoryAgreesWithTheHandbook_withinTenArcseconds(double altitude, double handbookArcsec) {
        assertThat(MEAN_DRY_AIR.lift(Angle.ofDegrees(altitude)).arcseconds())
                .isBetween(handbookArcsec - 11, handbookArcsec);
    }

    /** One Newton step from the true zenith distance, as in ERFA's atioq. */
    @ParameterizedTest
    @CsvSource({"8", "10", "15", "20", "30", "45", "60", "80", "89"})
    void theoryAgreesWithErfasOwnInversion(double altitudeDeg) {
        var constants = JSOFA.jauRefco(1010, 10, 0, 0.55);
        double sin = Math.sin(Math.toRadians(altitudeDeg));
        double tan = Math.cos(Math.toRadians(altitudeDeg)) / sin;
        double w = constants.b * tan * tan;
        double erfaRad = (constants.a + w) * tan / (1 + (constants.a + 3 * w) / (sin * sin));
        assertThat(MEAN_DRY_AIR.lift(Angle.ofDegrees(altitudeDeg)).arcseconds())
                .isCloseTo(new Angle(erfaRad).arcseconds(), within(altitudeDeg >= 15 ? 0.005 : 0.05));
    }

    /** Meeus, example 16.a: true altitude 33.246′ is seen at 57.864′. */
    @Test
    void meeus16aSunsLowerEdgeAtTheHorizon() {
        Angle trueAltitude = Angle.ofArcminutes(33.246);
        assertThat(trueAltitude.plus(MEAN_DRY_AIR.lift(trueAltitude)).arcminutes())
                .isCloseTo(AuthorityTable.published("meeus16a_saemundsson"), within(0.001));
    }

    /** Meeus, example 16.a: Bennett's formula gives 28.754′ at an apparent 0.5°; the two are said to agree to 0.1′. */
    @Test
    void meeus16aBennettAtAnApparentHalfDegree() {
        Angle apparent = Angle.ofDegrees(0.5);
        assertThat(apparent.minus(MEAN_DRY_AIR.trueAltitude(apparent)).arcminutes())
                .isCloseTo(AuthorityTable.published("meeus16a_bennett"), within(0.1));
    }

    @Test
    void noRefractionWithoutAir() {
        Refraction none = new Refraction(Weather.AIRLESS);
        for (double altitude = -90; altitude <= 90; altitude += 0.5) {
            assertThat(none.lift(Angle.ofDegrees(altitude)).radians()).isZero();
        }
    }

    @Test
    void noRefractionAtTheZenith() {
        assertThat(MEAN_DRY_AIR.lift(Angle.QUARTER_TURN).arcseconds()).isCloseTo(0, within(1e-9));
    }

    @ParameterizedTest
    @MethodSource("airsAndAltitudes")
    void trueAltitude_invertsLift(Weather air, double altitudeDeg) {
        Refraction refraction = new Refraction(air);
        Angle altitude = Angle.ofDegrees(altitudeDeg);
        Angle back = refraction.trueAltitude(altitude.plus(refraction.lift(altitude)));
        assertThat(back.arcseconds()).isCloseTo(altitude.arcseconds(), within(0.001));
    }

    @ParameterizedTest
    @MethodSource("airs")
    void apparentAltitudeIncreasesWithTrueAltitude(Weather air) {
        Refraction refraction = new Refraction(air);
        double last = -90;
        for (int i = 0; i <= 95_000; i++) {
            Angle altitude = Angle.ofDegrees(-5 + i * 0.001);
            double seen = altitude.plus(refraction.lift(altitude)).degrees();
            assertThat(seen).isGreaterThan(last);
            last = seen;
        }
    }

    @ParameterizedTest
    @MethodSource("airs")
    void liftIsContinuous(Weather air) {
        Refraction refraction = new Refraction(air);
        for (int i = 0; i < 95_000; i++) {
            double before = refraction.lift(Angle.ofDegrees(-5 + i * 0.001)).arcseconds();
            double after =
                    refraction.lift(Angle.ofDegrees(-5 + (i + 1) * 0.001)).arcseconds();
            // 0.001 degrees is 3.6": even in the coldest air the lift changes by less than that.
            assertThat(Math.abs(after - before)).isLessThan(3.6);
        }
    }
}
