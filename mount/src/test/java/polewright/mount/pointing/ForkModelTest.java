package polewright.mount.pointing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.sky.angle.Angle;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.Site;

class ForkModelTest {
    /** The project's reference table; see authorities/pointing/README.md. */
    @ParameterizedTest
    @CsvFileSource(resources = "/authorities/pointing/pointing_public.csv", numLinesToSkip = 1)
    void direction_agreesWithTheReferenceTable_andFirstOrderIsClose(
            int id,
            double latDeg,
            double hourAngleDeg,
            double decDeg,
            double hourAngleZero,
            double decZero,
            double cone,
            double notSquare,
            double azErr,
            double altErr,
            double flat,
            double side,
            double sag,
            double trueHourAngleDeg,
            double trueDecDeg,
            double dHourAngle,
            double dDec,
            double firstOrderHourAngle,
            double firstOrderDec) {
        Site site = Site.ofDegrees(latDeg, 0, 0);
        double[] arcmin = {hourAngleZero, decZero, cone, notSquare, azErr, altErr, flat, side, sag};
        TermValues terms = terms(site, arcmin, 1);
        MountReading reading = new MountReading(Angle.ofDegrees(hourAngleDeg), Angle.ofDegrees(decDeg));

        HourAnglePlace looks = ForkModel.looksAt(site, terms, reading);

        assertThat(looks.hourAngle().minus(reading.hourAngle()).arcseconds()).isCloseTo(dHourAngle, within(0.01));
        assertThat(looks.declination().minus(reading.declination()).arcseconds())
                .isCloseTo(dDec, within(0.01));
        assertThat(looks.hourAngle().degrees()).isCloseTo(trueHourAngleDeg, within(6e-7));
        assertThat(looks.declination().degrees()).isCloseTo(trueDecDeg, within(6e-7));
        firstOrder(site, terms(site, arcmin, 1e-3), reading, firstOrderHourAngle, firstOrderDec);
    }

    private static TermValues terms(Site site, double[] arcmin, double share) {
        AxisOffset axis = AxisPointing.of(
                        site.poleAzimuth().plus(Angle.ofArcminutes(arcmin[4] * share)),
                        site.poleAltitude().plus(Angle.ofArcminutes(arcmin[5] * share)))
                .offset(site);
        return new TermValues(Map.of(
                PointingTerm.HOUR_ANGLE_ZERO, Angle.ofArcminutes(arcmin[0] * share),
                PointingTerm.DECLINATION_ZERO, Angle.ofArcminutes(arcmin[1] * share),
                PointingTerm.CONE, Angle.ofArcminutes(arcmin[2] * share),
                PointingTerm.AXES_NOT_SQUARE, Angle.ofArcminutes(arcmin[3] * share),
                PointingTerm.AXIS_EAST, axis.east(),
                PointingTerm.AXIS_UP, axis.up(),
                PointingTerm.FORK_SAG_FLAT, Angle.ofArcminutes(arcmin[6] * share),
                PointingTerm.FORK_SAG_SIDE, Angle.ofArcminutes(arcmin[7] * share),
                PointingTerm.TUBE_SAG, Angle.ofArcminutes(arcmin[8] * share)));
    }

    /** A thousandth of each term: the second-order remainder is a thousandth of the table's. */
    private static void firstOrder(
            Site site, TermValues small, MountReading reading, double hourAngleArcsec, double decArcsec) {
        HourAnglePlace looks = ForkModel.looksAt(site, small, reading);
        assertThat(looks.hourAngle().minus(reading.hourAngle()).arcseconds() * 1000)
                .isCloseTo(hourAngleArcsec, within(0.01));
        assertThat(looks.declination().minus(reading.declination()).arcseconds() * 1000)
                .isCloseTo(decArcsec, within(0.01));
    }

    @Test
    void readingForAPlace_pointsTheTubeThere_alsoThroughThePole() {
        Random random = new Random(41);
        for (int i = 0; i < 2000; i++) {
            Site site = Site.ofDegrees(random.nextDouble() * 170 - 85, 0, 0);
            TermValues terms = TermValues.NONE.with(
                    PointingTerm.HOUR_ANGLE_ZERO, Angle.ofDegrees(random.nextDouble() * 360 - 180));
            for (PointingTerm term : PointingTerm.values()) {
                if (term != PointingTerm.HOUR_ANGLE_ZERO) {
                    terms = terms.with(term, term.usualSize().times(random.nextDouble() * 2 - 1));
                }
            }
            HourAnglePlace wanted = new HourAnglePlace(
                    Angle.ofDegrees(random.nextDouble() * 360 - 180), Angle.ofDegrees(random.nextDouble() * 164 - 82));
            boolean isThroughPole = random.nextBoolean();

            MountReading reading = ForkModel.readingFor(site, terms, wanted, isThroughPole);

            HourAnglePlace looks = ForkModel.looksAt(site, terms, reading);
            assertThat(SkyOffset.between(wanted, looks).distance().arcseconds()).isLessThan(1e-3);
        }
    }

    /** Half an arcminute past the pole is a short distance on the sky, whatever the difference in hour angle. */
    @Test
    void differencesCloseToThePole_areMeasuredOnTheSky() {
        HourAnglePlace near = new HourAnglePlace(Angle.ZERO, Angle.ofDegrees(90).minus(Angle.ofArcseconds(10)));
        HourAnglePlace across =
                new HourAnglePlace(Angle.HALF_TURN, Angle.ofDegrees(90).minus(Angle.ofArcseconds(20)));

        SkyOffset offset = SkyOffset.between(near, across);

        assertThat(offset.distance().arcseconds()).isCloseTo(30, within(1e-6));
        assertThat(offset.north().arcseconds()).isCloseTo(30, within(1e-6));
    }
}
