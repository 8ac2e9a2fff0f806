package polewright.mount;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** The design's first-order formulas against exact rotations. */
class FirstOrderGeometryTest {
    /** Sidereal rate, rad per minute: one turn in 86164.0905 s. */
    private static final double RATE = 2 * Math.PI / 86164.0905 * 60;

    private static final double ARCSEC = Angle.ofArcseconds(1).radians();

    /** A mount tracking at the sidereal rate about its own axis instead of the celestial one. */
    private record Mount(Site site, Vector3D northernEnd) {
        Mount(Site site, AxisPointing axis) {
            this(site, axis.northernEnd(site));
        }

        Vector3D pole() {
            return new Vector3D(0, site.latitude().cos(), site.latitude().sin());
        }

        /** Celestial hour angle and declination, hour angle positive west. */
        Vector3D star(double hourAngleRad, double decRad) {
            Vector3D upper =
                    new Vector3D(0, -site.latitude().sin(), site.latitude().cos());
            return new Vector3D(
                    Math.sin(decRad),
                    pole(),
                    Math.cos(decRad) * Math.cos(hourAngleRad),
                    upper,
                    -Math.cos(decRad) * Math.sin(hourAngleRad),
                    Vector3D.PLUS_I);
        }

        double decDrift(Vector3D start, double minutes) {
            return Math.asin(northernEnd.dotProduct(skyTurned(start, minutes)))
                    - Math.asin(northernEnd.dotProduct(start));
        }

        /** The star's hour angle about the mount's axis, minus the advance of the drive. */
        double hourAngleDrift(Vector3D start, double minutes) {
            return new Angle(mountHourAngle(skyTurned(start, minutes)) - mountHourAngle(start) - RATE * minutes)
                    .wrappedSigned()
                    .radians();
        }

        /** Rotation of the camera on the sky, north toward east, with the star kept on its mark by both axes. */
        double guidedTurn(Vector3D start, double minutes) {
            return new Angle(mountNorthFromNorth(skyTurned(start, minutes)) - mountNorthFromNorth(start))
                    .wrappedSigned()
                    .radians();
        }

        /** The same without guiding: the component along the tube of its whole rotation relative to the stars. */
        double unguidedTurn(Vector3D start, double minutes) {
            Rotation againstStars = turn(pole(), RATE * minutes)
                    .compose(turn(northernEnd, -RATE * minutes), RotationConvention.VECTOR_OPERATOR);
            // North to east is anticlockwise to someone inside the sphere: against the outward direction.
            return -againstStars.getAngle()
                    * againstStars.getAxis(RotationConvention.VECTOR_OPERATOR).dotProduct(start);
        }

        private Vector3D skyTurned(Vector3D star, double minutes) {
            return turn(pole(), -RATE * minutes).applyTo(star);
        }

        private double mountHourAngle(Vector3D direction) {
            Vector3D zero = northernEnd.crossProduct(Vector3D.PLUS_I).normalize();
            Vector3D quarterWest = zero.crossProduct(northernEnd);
            return Math.atan2(direction.dotProduct(quarterWest), direction.dotProduct(zero));
        }

        private double mountNorthFromNorth(Vector3D direction) {
            Vector3D east = pole().crossProduct(direction).normalize();
            Vector3D north = direction.crossProduct(east);
            return Math.atan2(northernEnd.dotProduct(east), northernEnd.dotProduct(north));
        }

        private static Rotation turn(Vector3D about, double angleRad) {
            return new Rotation(about, angleRad, RotationConvention.VECTOR_OPERATOR);
        }
    }

    /** A random place on Earth and on the sky, and an axis offset in a random direction with a size given later. */
    private record Case(Site site, double hourAngle, double dec, double direction) {
        static Case of(long seed) {
            Random random = new Random(seed);
            return new Case(
                    Site.ofDegrees(-75 + 150 * random.nextDouble(), 0, 0),
                    2 * Math.PI * random.nextDouble(),
                    Math.toRadians(-60 + 120 * random.nextDouble()),
                    2 * Math.PI * random.nextDouble());
        }

        AxisOffset offset(double arcmin) {
            return AxisOffset.ofArcminutes(arcmin * Math.sin(direction), arcmin * Math.cos(direction));
        }

        Mount mount(double arcmin) {
            return new Mount(site, AxisPointing.of(site, offset(arcmin)));
        }

        /** Component of the northern end's offset along east, rad. */
        double east(double arcmin) {
            return site.hemisphereSign() * offset(arcmin).east().radians();
        }

        double up(double arcmin) {
            return site.hemisphereSign() * offset(arcmin).up().radians();
        }
    }

    static Stream<Case> cases() {
        return IntStream.range(0, 100).mapToObj(i -> Case.of(7_100L + i));
    }

    // One second: so short that rate times time is the drift.
    private static final double SHORT = 1 / 60.0;

    @ParameterizedTest
    @MethodSource("cases")
    void declinationDrift_isMinusRateTimesEastCosPlusUpSin_toSecondOrder(Case c) {
        for (double arcmin : new double[] {1, 10, 100}) {
            double expected = -RATE * (c.east(arcmin) * Math.cos(c.hourAngle) + c.up(arcmin) * Math.sin(c.hourAngle));
            Mount mount = c.mount(arcmin);
            double exact = mount.decDrift(startOfShort(c, mount), SHORT) / SHORT;
            assertThat(exact).isCloseTo(expected, within(secondOrder(c, arcmin)));
        }
    }

    @ParameterizedTest
    @MethodSource("cases")
    void driftAlongRightAscension_eastward_isMinusRateSinDecTimesUpCosMinusEastSin_toSecondOrder(Case c) {
        for (double arcmin : new double[] {1, 10, 100}) {
            double expected = -RATE * Math.sin(c.dec) * rotationTerm(c, arcmin);
            Mount mount = c.mount(arcmin);
            double westward = mount.hourAngleDrift(startOfShort(c, mount), SHORT) / SHORT * Math.cos(c.dec);
            assertThat(-westward).isCloseTo(expected, within(secondOrder(c, arcmin)));
        }
    }

    @ParameterizedTest
    @MethodSource("cases")
    void fieldRotationAboutAGuideStar_isRateTimesUpCosMinusEastSinOverCosDec_toSecondOrder(Case c) {
        for (double arcmin : new double[] {1, 10, 100}) {
            double expected = RATE * rotationTerm(c, arcmin) / Math.cos(c.dec);
            Mount mount = c.mount(arcmin);
            double exact = mount.guidedTurn(startOfShort(c, mount), SHORT) / SHORT;
            assertThat(exact).isCloseTo(expected, within(secondOrder(c, arcmin)));
        }
    }

    /** Computed outside this project: the factor 1 / cos δ belongs to guided exposures only. */
    @ParameterizedTest
    @MethodSource("cases")
    void fieldRotationWithoutGuiding_isTheSameTimesCosDec_toSecondOrder(Case c) {
        for (double arcmin : new double[] {1, 10, 100}) {
            double expected = RATE * rotationTerm(c, arcmin) * Math.cos(c.dec);
            Mount mount = c.mount(arcmin);
            double exact = mount.unguidedTurn(startOfShort(c, mount), SHORT) / SHORT;
            assertThat(exact).isCloseTo(expected, within(secondOrder(c, arcmin)));
        }
    }

    private static double rotationTerm(Case c, double arcmin) {
        return c.up(arcmin) * Math.cos(c.hourAngle) - c.east(arcmin) * Math.sin(c.hourAngle);
    }

    private static Vector3D startOfShort(Case c, Mount mount) {
        return mount.star(c.hourAngle - RATE * SHORT / 2, c.dec);
    }

    /** Offset squared, times the gradient at the star's place; plus a floor for rounding. */
    private static double secondOrder(Case c, double arcmin) {
        double offset = Angle.ofArcminutes(arcmin).radians();
        double cosDec = Math.cos(c.dec);
        return RATE * offset * offset * 1.5 / (cosDec * cosDec) + 1e-11;
    }

    /** The project's reference table; see authorities/drift/README.md. It is rounded to 0.001″. */
    @ParameterizedTest
    @CsvFileSource(resources = "/authorities/drift/drift_public.csv", numLinesToSkip = 1)
    void exactRotations_agreeWithTheReferenceTable(
            int id,
            double latDeg,
            double azErrArcmin,
            double altErrArcmin,
            double hourAngleDeg,
            double decDeg,
            double minutes,
            double decDrift,
            double hourAngleDrift,
            double hourAngleDriftOnSky,
            double guided,
            double unguided,
            double firstOrderDecDrift,
            double firstOrderHourAngleDrift) {
        Site site = Site.ofDegrees(latDeg, 0, 0);
        AxisPointing axis = AxisPointing.of(
                site.poleAzimuth().plus(Angle.ofArcminutes(azErrArcmin)),
                site.poleAltitude().plus(Angle.ofArcminutes(altErrArcmin)));
        Mount mount = new Mount(site, axis);
        Vector3D start = mount.star(Math.toRadians(hourAngleDeg), Math.toRadians(decDeg));

        assertThat(mount.decDrift(start, minutes) / ARCSEC).isCloseTo(decDrift, within(0.001));
        double hourAngle = mount.hourAngleDrift(start, minutes) / ARCSEC;
        assertThat(hourAngle).isCloseTo(hourAngleDrift, within(0.001));
        double mountDec = Math.asin(mount.northernEnd().dotProduct(start));
        assertThat(hourAngle * Math.cos(mountDec)).isCloseTo(hourAngleDriftOnSky, within(0.002));
        assertThat(mount.guidedTurn(start, minutes) / ARCSEC).isCloseTo(guided, within(0.001));
        // The table does not state at which point of the field this rotation applies; over the length of a drift it
        // differs by this much.
        assertThat(mount.unguidedTurn(start, minutes) / ARCSEC).isCloseTo(unguided, within(0.05));
        firstOrderOverTheWholeRun(site, axis, hourAngleDeg, decDeg, minutes)
                .isCloseTo(firstOrderDecDrift, firstOrderHourAngleDrift);
    }

    private record FirstOrder(double decArcsec, double hourAngleArcsec) {
        void isCloseTo(double expectedDec, double expectedHourAngle) {
            assertThat(decArcsec).isCloseTo(expectedDec, within(0.001));
            assertThat(hourAngleArcsec).isCloseTo(expectedHourAngle, within(0.001));
        }
    }

    /**
     * Computed outside this project: over a finite run, differences of sines and cosines instead of rate times time.
     */
    private static FirstOrder firstOrderOverTheWholeRun(
            Site site, AxisPointing axis, double hourAngleDeg, double decDeg, double minutes) {
        double east = site.latitude().cos() * axis.azimuthError(site).radians();
        double up = site.hemisphereSign() * axis.altitudeError(site).radians();
        double h1 = Math.toRadians(hourAngleDeg);
        double h2 = h1 + RATE * minutes;
        double dec = up * (Math.cos(h2) - Math.cos(h1)) - east * (Math.sin(h2) - Math.sin(h1));
        double hourAngle = Math.tan(Math.toRadians(decDeg))
                * (up * (Math.sin(h2) - Math.sin(h1)) + east * (Math.cos(h2) - Math.cos(h1)));
        return new FirstOrder(dec / ARCSEC, hourAngle / ARCSEC);
    }

    /**
     * Computed and simulated outside this project: on the meridian an offset of 1′ drifts by 0.26251″ a minute at every
     * declination, so that 3.81 · drift / (minutes · cos δ) would give 1.00′, 1.15′, 2.00′ and 5.76′ for one arcminute.
     */
    @ParameterizedTest
    @CsvSource({"0, 1.00", "30, 1.15", "60, 2.00", "80, 5.76"})
    void dividingADriftByCosDeclination_isWrong(double decDeg, double wrongArcmin) {
        Site site = Site.ofDegrees(54.60, -2.90, 240);
        Mount mount = new Mount(site, AxisPointing.of(site, AxisOffset.ofArcminutes(1, 0)));
        Vector3D start = mount.star(-RATE / 2, Math.toRadians(decDeg));

        double drift = -mount.decDrift(start, 1) / ARCSEC;

        assertThat(3.8093 * drift).as("as it is").isCloseTo(1, within(0.001));
        assertThat(3.8093 * drift / Math.cos(Math.toRadians(decDeg)))
                .as("divided by cos δ")
                .isCloseTo(wrongArcmin, within(0.005));
    }

    /**
     * The offset that a guided exposure tolerates, at the worst hour angle: E = 750.3° · S cos δ / (T F A) for a trail
     * of S micrometres in T minutes at focal length F mm, A degrees from the guide star. Derived here; it agrees with
     * the form attributed to R. N. Hook, J. Br. astron. Assoc. 99 (1989) 19, which a public quotation of 2003 gives as
     * 750 (the paper itself was not read).
     */
    @ParameterizedTest
    @CsvSource({"0, 1000, 1, 10, 30", "45, 500, 2, 20, 10", "60, 2000, 0.5, 30, 20", "-30, 135, 8, 20, 15"})
    void toleranceOfAGuidedExposure_agreesWithTheFormulaAttributedToHook(
            double decDeg, double focalMm, double cornerDeg, double minutes, double trailMicrometres) {
        double dec = Math.toRadians(decDeg);
        double toleranceDeg = 750.3 * trailMicrometres * Math.cos(dec) / (minutes * focalMm * cornerDeg);
        Site site = Site.ofDegrees(decDeg < 0 ? -43.95 : 54.60, 0, 0);
        double worst = 0;
        for (int direction = 0; direction < 360; direction++) {
            double a = Math.toRadians(direction);
            AxisOffset offset =
                    AxisOffset.ofArcminutes(60 * toleranceDeg * Math.sin(a), 60 * toleranceDeg * Math.cos(a));
            Mount mount = new Mount(site, AxisPointing.of(site, offset));
            Vector3D start = mount.star(-RATE * minutes / 2, dec);
            double trail = 1000 * focalMm * Math.toRadians(cornerDeg) * Math.abs(mount.guidedTurn(start, minutes));
            worst = Math.max(worst, trail);
        }
        assertThat(worst).isCloseTo(trailMicrometres, within(0.01 * trailMicrometres));
    }

    @Test
    void classicConstants_followFromTheSiderealRate() {
        assertThat(60 * RATE).isCloseTo(0.26252, within(0.000005));
        assertThat(1 / (60 * RATE)).isCloseTo(3.8093, within(0.0001));
        assertThat(1e-3 * Math.pow(Math.toDegrees(1), 2) / RATE).isCloseTo(750.3, within(0.05));
    }
}
