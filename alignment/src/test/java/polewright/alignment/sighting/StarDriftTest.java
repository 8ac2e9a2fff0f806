package polewright.alignment.sighting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static polewright.alignment.sighting.SkySetting.EVENING;
import static polewright.alignment.sighting.SkySetting.LARKFELL;
import static polewright.alignment.sighting.SkySetting.TUSSOCK_FLAT;
import static polewright.alignment.sighting.SkySetting.starAt;

import java.time.Duration;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.rig.ClockDirection;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.View;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

class StarDriftTest {
    private static final double OMEGA_ARCSEC_PER_SECOND = 15.041067;
    private static final Angle ONE_ARCSECOND = Angle.ofArcseconds(1);

    /** Northward drift in arcseconds that the model predicts for an axis. */
    private static double driftArcsec(
            Site site, AxisPointing axis, double hourAngleDeg, double declinationDeg, double minutes) {
        StarDrift none = new StarDrift(
                EVENING,
                Duration.ofMillis(Math.round(minutes * 60_000)),
                starAt(site, EVENING, hourAngleDeg, declinationDeg),
                ReadLength.ofArcseconds(0),
                new DriftDirection.OnSky(true, ReticleNorth.MOUNT),
                ONE_ARCSECOND);
        return none.model(site, Weather.AIRLESS).residual(axis.elevatedEnd())[0];
    }

    /** Reference table of the project; see authorities/drift/README.md. */
    @ParameterizedTest
    @CsvFileSource(resources = "/authorities/drift/drift_public.csv", numLinesToSkip = 1)
    void drift_agreesWithTheExactRotationsOfTheReferenceTable(
            int id,
            double latDeg,
            double azErrArcmin,
            double altErrArcmin,
            double hourAngleDeg,
            double decDeg,
            double minutes,
            double decDriftArcsec) {
        Site site = Site.ofDegrees(latDeg, 0, 0);
        AxisPointing axis = AxisPointing.of(
                site.poleAzimuth().plus(Angle.ofArcminutes(azErrArcmin)),
                site.poleAltitude().plus(Angle.ofArcminutes(altErrArcmin)));
        double endDeg = hourAngleDeg + minutes * 60 * OMEGA_ARCSEC_PER_SECOND / 3600;
        if (!isUp(site, hourAngleDeg, decDeg, 0) || !isUp(site, endDeg, decDeg, 0)) {
            // One row of the table dips below the horizon, where no star can be watched.
            assertThatThrownBy(() -> driftArcsec(site, axis, hourAngleDeg, decDeg, minutes))
                    .isInstanceOf(InputRefused.class);
            return;
        }
        // The table's star has a constant place; here aberration and nutation change it by some hundredths of an
        // arcsecond.
        assertThat(driftArcsec(site, axis, hourAngleDeg, decDeg, minutes))
                .as("misalignment %d", id)
                .isCloseTo(decDriftArcsec, within(0.03));
    }

    /** Common practice, and a table of directions calculated outside this project. */
    @ParameterizedTest
    @CsvSource({
        "north, east, 0, south",
        "north, west, 0, north",
        "north, high, -85, north",
        "north, low, -85, south",
        "north, high, 85, south",
        "north, low, 85, north",
        "south, east, 0, north",
        "south, west, 0, south",
        "south, high, -85, south",
        "south, low, -85, north",
        "south, high, 85, north",
        "south, low, 85, south",
    })
    void driftDirection_isThatOfCommonPractice(
            String hemisphere, String axisError, double hourAngleDeg, String drifts) {
        Site site = hemisphere.equals("north") ? LARKFELL : TUSSOCK_FLAT;
        AxisOffset offset = switch (axisError) {
            case "east" -> AxisOffset.ofArcminutes(20, 0);
            case "west" -> AxisOffset.ofArcminutes(-20, 0);
            case "high" -> AxisOffset.ofArcminutes(0, 20);
            default -> AxisOffset.ofArcminutes(0, -20);
        };
        double drift = driftArcsec(site, AxisPointing.of(site, offset), hourAngleDeg, 2 * site.hemisphereSign(), 5);
        assertThat(drift > 0 ? "north" : "south").isEqualTo(drifts);
        assertThat(Math.abs(drift)).isGreaterThan(20);
    }

    /** The classic constant: 1′ drifts 0.2625″ per minute, 3.81 is its inverse; it does not depend on declination. */
    @ParameterizedTest
    @CsvSource({"0", "30", "60", "-20"})
    void oneArcminuteEast_driftsAtTheClassicRateOnTheMeridian_atAnyDeclination(double decDeg) {
        AxisPointing axis = AxisPointing.of(LARKFELL, AxisOffset.ofArcminutes(1, 0));
        double halfMinuteDeg = 0.5 * OMEGA_ARCSEC_PER_SECOND * 60 / 3600;
        assertThat(driftArcsec(LARKFELL, axis, -halfMinuteDeg, decDeg, 1)).isCloseTo(-0.26252, within(0.0015));
    }

    static Stream<Long> seeds() {
        return IntStream.range(0, 60).mapToObj(i -> 4_000L + i);
    }

    /** The design's first-order formula, integrated over the run, holds to second order in the offset. */
    @ParameterizedTest
    @MethodSource("seeds")
    void driftFormula_holdsToSecondOrder_inBothHemispheres(long seed) {
        Random random = new Random(seed);
        Site site = Site.ofDegrees(-70 + 140 * random.nextDouble(), 0, 0);
        double decDeg = -40 + 80 * random.nextDouble();
        double startDeg = -60 + 100 * random.nextDouble();
        double minutes = 10;
        double endDeg = startDeg + minutes * 60 * OMEGA_ARCSEC_PER_SECOND / 3600;
        if (!isUp(site, startDeg, decDeg, 3) || !isUp(site, endDeg, decDeg, 3)) {
            return;
        }
        for (double arcmin : new double[] {2, 20}) {
            double direction = 2 * Math.PI * random.nextDouble();
            AxisOffset offset = AxisOffset.ofArcminutes(arcmin * Math.sin(direction), arcmin * Math.cos(direction));
            // Northern-end components, as required by the design's formula.
            double e = site.hemisphereSign() * offset.east().arcseconds();
            double u = site.hemisphereSign() * offset.up().arcseconds();
            double first = -e * (Math.sin(Math.toRadians(endDeg)) - Math.sin(Math.toRadians(startDeg)))
                    + u * (Math.cos(Math.toRadians(endDeg)) - Math.cos(Math.toRadians(startDeg)));
            double exact = driftArcsec(site, AxisPointing.of(site, offset), startDeg, decDeg, minutes);
            double offsetRad = offset.distance().radians();
            double secondOrder =
                    offset.distance().arcseconds() * offsetRad * (1 + Math.abs(Math.tan(Math.toRadians(decDeg))));
            assertThat(exact).isCloseTo(first, within(0.03 + secondOrder));
        }
    }

    private static boolean isUp(Site site, double hourAngleDeg, double decDeg, double aboveDeg) {
        double sine = site.latitude().sin() * Math.sin(Math.toRadians(decDeg))
                + site.latitude().cos() * Math.cos(Math.toRadians(decDeg)) * Math.cos(Math.toRadians(hourAngleDeg));
        return sine > Math.sin(Math.toRadians(aboveDeg));
    }

    @Test
    void refractionAlone_makesALowEasternStarDrift_withTheAxisAtTheTruePole() {
        // Calculated outside this project: dec drift = w sin h · k sin φ cos φ / D², at H = −45°, δ = 0 (30° up), 1010
        // hPa, 10 °C. That omits the tan³ term of refraction, worth 3·B/A·tan²z = 1 % here.
        Site site = Site.ofDegrees(45, 0, 0);
        StarDrift drift = new StarDrift(
                EVENING,
                Duration.ofMinutes(10),
                starAt(site, EVENING, -46.25, 0),
                ReadLength.ofArcseconds(0),
                new DriftDirection.OnSky(true, ReticleNorth.MOUNT),
                ONE_ARCSECOND);
        double seen = drift.model(site, new Weather(1010, 10, 0))
                .residual(AxisPointing.atPole(site).elevatedEnd())[0];
        double h = Math.toRadians(-45);
        double sinAlt = Math.cos(Math.PI / 4) * Math.cos(h);
        double expected = 0.00437527 * 10 * Math.sin(h) * 58.07 * 0.5 / (sinAlt * sinAlt);
        assertThat(seen).isCloseTo(expected, within(0.02 * Math.abs(expected)));
    }

    @Test
    void driftTowardAnEdge_dependsOnTheView() {
        // On the meridian south of the zenith the sky's north is up. Inverted, a drift toward the top edge is south.
        StarDrift drift = new StarDrift(
                EVENING,
                Duration.ofMinutes(6),
                starAt(LARKFELL, EVENING, -0.75, 0),
                ReadLength.ofArcseconds(30),
                new DriftDirection.TowardEdge(new ClockDirection(12), View.of(Orientation.INVERTED)),
                ONE_ARCSECOND);
        double residualAtPole = drift.model(LARKFELL, Weather.AIRLESS)
                .residual(AxisPointing.atPole(LARKFELL).elevatedEnd())[0];
        // predicted 0 minus measured −30
        assertThat(residualAtPole).isCloseTo(30, within(0.1));
    }

    @ParameterizedTest
    @CsvSource({
        // On the sky with north up, west is at the right: 3 o'clock. Mirrored, it is at the left.
        "12, 3, false, 1",
        "6, 3, false, -1",
        "3, 6, false, 1",
        "12, 9, true, 1",
        "6, 9, true, -1",
        "6, 9, false, 1",
    })
    void north_isAQuarterTurnFromWest(double edge, double west, boolean mirrored, double northShare) {
        DriftDirection direction =
                new DriftDirection.TowardEdgeGivenWest(new ClockDirection(edge), new ClockDirection(west), mirrored);
        var any = AxisPointing.atPole(LARKFELL).elevatedEnd();
        assertThat(direction.northShare(any, any)).isCloseTo(northShare, within(1e-12));
    }

    @Test
    void driftAlongEastAndWest_isRefused() {
        assertThatThrownBy(() ->
                        new DriftDirection.TowardEdgeGivenWest(new ClockDirection(9), new ClockDirection(3), false))
                .isInstanceOf(InputRefused.class)
                .hasMessage("a drift toward 9 o'clock is along east and west (west is at 3), which measures the"
                        + " drive and not the axis. Give only the motion across that line; 0 if there was none.");
    }

    @Test
    void driftOfZeroMinutes_isRefused() {
        assertThatThrownBy(() -> new StarDrift(
                        EVENING,
                        Duration.ZERO,
                        starAt(LARKFELL, EVENING, 0, 0),
                        ReadLength.ofArcseconds(5),
                        new DriftDirection.OnSky(true, ReticleNorth.MOUNT),
                        ONE_ARCSECOND))
                .isInstanceOf(InputRefused.class)
                .hasMessage("a drift of 0 minutes is outside 0 to 360. Give how long the star was watched, at least a"
                        + " minute or two.");
    }

    @Test
    void driftOfAStarBelowTheHorizon_isRefused() {
        StarDrift drift = new StarDrift(
                EVENING,
                Duration.ofMinutes(5),
                starAt(LARKFELL, EVENING, 180, 0),
                ReadLength.ofArcseconds(5),
                new DriftDirection.OnSky(true, ReticleNorth.MOUNT),
                ONE_ARCSECOND);
        assertThatThrownBy(() -> drift.model(LARKFELL, Weather.AIRLESS))
                .isInstanceOf(InputRefused.class)
                .hasMessage("a test star was 36 degrees below the horizon at 2026-11-25T20:00:00Z. Check the name, the"
                        + " time (UTC) and the site.");
    }

    @Test
    void zeroFieldWidth_isRefused() {
        assertThatThrownBy(() -> ReadLength.ofField(0.3, Angle.ZERO))
                .isInstanceOf(InputRefused.class)
                .hasMessage("0 degrees for one of the field widths is outside 0 to 60. Give the true field"
                        + " width in degrees, above 0.");
    }
}
