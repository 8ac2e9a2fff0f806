package polewright.sky.magnetic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.sky.place.Site;
import polewright.sky.time.SkyTime;

class MagneticFieldTest {
    private static final MagneticModel MODEL = MagneticModel.wmm2025();
    private static final Site LARKFELL = Site.ofDegrees(54.60, -2.90, 240);
    private static final Site TUSSOCK_FLAT = Site.ofDegrees(-43.95, 170.40, 710);

    private static MagneticField at(Site site, String utc) {
        return MODEL.field(site, SkyTime.of(Instant.parse(utc)));
    }

    @Test
    void needlePointsEastOfNorthWhenDeclinationIsPositive() {
        assertThat(new MagneticField(20_000, 5_000, 0, List.of()).declination().degrees())
                .isCloseTo(14.036, within(0.001));
    }

    @Test
    void fieldDipsIntoTheGroundInTheNorthAndOutOfItInTheSouth() {
        assertThat(at(LARKFELL, "2026-11-20T21:00:00Z").inclination().degrees()).isBetween(60.0, 80.0);
        assertThat(at(TUSSOCK_FLAT, "2026-11-20T12:00:00Z").inclination().degrees())
                .isBetween(-80.0, -60.0);
    }

    /** √(0.26² + (5417/H)²): the WMM2025 report's error model, as quoted in public source code. */
    @ParameterizedTest
    @CsvSource({"18000, 0.398", "5417, 1.033", "40000, 0.293"})
    void declinationIsLessCertainWhereTheHorizontalFieldIsWeak(double horizontalNanotesla, double degrees) {
        assertThat(new MagneticField(horizontalNanotesla, 0, 0, List.of())
                        .declinationUncertainty()
                        .degrees())
                .isCloseTo(degrees, within(0.001));
    }

    @ParameterizedTest
    @CsvSource({"1999, USELESS", "2000, CAUTION", "5999, CAUTION", "6000, NORMAL"})
    void compassTrustFollowsTheZonesOfTheReport(double horizontalNanotesla, CompassTrust trust) {
        assertThat(new MagneticField(horizontalNanotesla, 0, 0, List.of()).compassTrust())
                .isEqualTo(trust);
    }

    @ParameterizedTest
    @ValueSource(strings = {"2025-01-01T00:00:00Z", "2027-06-15T00:00:00Z", "2030-01-01T00:00:00Z"})
    void withinTheFiveYears_thereIsNoNote(String utc) {
        assertThat(at(LARKFELL, utc).notes()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"2024-07-02T00:00:00Z, 2024.5", "2031-03-15T00:00:00Z, 2031.2"})
    void outsideTheFiveYears_theFieldComesWithANote(String utc, String year) {
        MagneticField field = at(LARKFELL, utc);
        assertThat(field.notes())
                .containsExactly("The magnetic model WMM2025 is valid from 2025.0 to 2030.0. For " + year
                        + " it is extrapolated, and the declination may be wrong by more than stated. Check"
                        + " north by the Sun or a star.");
        assertThat(field.declination().degrees()).isBetween(-3.0, 2.0);
    }

    @Test
    void compassIsUselessNearTheMagneticPole() {
        MagneticField field = at(Site.ofDegrees(86, 140, 0), "2026-07-01T00:00:00Z");
        assertThat(field.compassTrust()).isEqualTo(CompassTrust.USELESS);
        assertThat(field.notes())
                .containsExactly("A compass is of no use here: the horizontal field is "
                        + Math.round(field.horizontalNanotesla())
                        + " nT, under 2000 nT. Find north by the Sun or a star.");
    }

    @Test
    void compassIsDoubtfulSomeWayFromTheMagneticPole() {
        MagneticField field = at(Site.ofDegrees(75, -110, 0), "2026-07-01T00:00:00Z");
        assertThat(field.compassTrust()).isEqualTo(CompassTrust.CAUTION);
        assertThat(field.notes())
                .containsExactly("A compass is weak here: the horizontal field is "
                        + Math.round(field.horizontalNanotesla())
                        + " nT, under 6000 nT. Check north by the Sun or a star.");
    }

    @ParameterizedTest
    @ValueSource(doubles = {90, -90})
    void fieldIsDefinedAtThePoles(double latitude) {
        MagneticField field = at(Site.ofDegrees(latitude, 0, 0), "2026-07-01T00:00:00Z");
        MagneticField beside = at(Site.ofDegrees(Math.copySign(89.9999, latitude), 0, 0), "2026-07-01T00:00:00Z");
        assertThat(field.totalNanotesla()).isCloseTo(beside.totalNanotesla(), within(1.0));
        assertThat(field.northNanotesla()).isCloseTo(beside.northNanotesla(), within(1.0));
        assertThat(field.eastNanotesla()).isCloseTo(beside.eastNanotesla(), within(1.0));
    }

    @ParameterizedTest
    @CsvSource({
        "2025-01-01T00:00:00Z, 2025.0",
        "2025-07-02T12:00:00Z, 2025.5",
        "2028-07-02T00:00:00Z, 2028.5",
        "2026-12-31T23:59:59.999Z, 2027.0"
    })
    void decimalYearCountsTheDaysOfItsOwnYear(Instant utc, double year) {
        assertThat(MagneticModel.decimalYear(utc)).isCloseTo(year, within(1e-9));
    }
}
