package polewright.sky.place;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static polewright.sky.ReferenceStars.dms;
import static polewright.sky.ReferenceStars.hms;

import java.time.Instant;
import org.junit.jupiter.api.Test;
import polewright.sky.AuthorityTable;
import polewright.sky.angle.Angle;
import polewright.sky.time.SkyTime;

/** Meeus, Astronomical Algorithms (2nd edition), examples 21.b and 23.a: θ Persei. See authorities/published. */
class ApparentPlaceOfStarTest {
    private static final double MAS_PER_SECOND_OF_TIME = 15_000;
    private static final Angle DECLINATION = dms(49, 13, 42.48);
    private static final CatalogueStar THETA_PERSEI = new CatalogueStar(
            hms(2, 44, 11.986), DECLINATION, 0.03425 * MAS_PER_SECOND_OF_TIME * DECLINATION.cos(), -89.5, 0, 0);
    // The book's JDE 2462088.69 less TT-UTC, 69.184 s. From the pole, where the Earth's rotation adds no aberration.
    private static final ObservingMoment MOMENT = ObservingMoment.of(
            Site.ofDegrees(90, 0, 0),
            SkyTime.of(Instant.parse("2028-11-13T04:33:36Z").minusMillis(69_184)),
            Weather.AIRLESS);

    @Test
    void meeus23aApparentPlaceOfThetaPersei() {
        ApparentPlace place = MOMENT.apparent(THETA_PERSEI);
        assertThat(place.rightAscension().hours() * 3600)
                .isCloseTo(AuthorityTable.publishedAngle("meeus23a_ra").hours() * 3600, within(0.01));
        assertThat(place.declination().arcseconds())
                .isCloseTo(AuthorityTable.publishedAngle("meeus23a_dec").arcseconds(), within(0.1));
    }

    @Test
    void meeus21bMeanPlaceOfThetaPersei_afterRemovingNutationAndAberration() {
        // There is no type for mean places here. The book's precession is that of 1976, 0.10" from ours in right
        // ascension.
        ApparentPlace place = MOMENT.apparent(THETA_PERSEI);
        double meanRaArcsec = place.rightAscension().arcseconds() - 15.843 - 30.045;
        double meanDecArcsec = place.declination().arcseconds() - 6.217 - 6.697;
        assertThat(meanRaArcsec / 15)
                .isCloseTo(AuthorityTable.publishedAngle("meeus21b_ra").hours() * 3600, within(0.01));
        assertThat(meanDecArcsec)
                .isCloseTo(AuthorityTable.publishedAngle("meeus21b_dec").arcseconds(), within(0.1));
    }

    @Test
    void catalogueDirectionUndoesApparent() {
        CatalogueStar star = CatalogueStar.fixed(Angle.ofDegrees(123.4), Angle.ofDegrees(-56.7));
        CatalogueStar back = MOMENT.catalogueDirection(MOMENT.apparent(star));
        assertThat(back.rightAscension().arcseconds())
                .isCloseTo(star.rightAscension().arcseconds(), within(1e-4));
        assertThat(back.declination().arcseconds()).isCloseTo(star.declination().arcseconds(), within(1e-4));
    }

    @Test
    void tinySeparationsKeepTheirPrecision() {
        ApparentPlace here = ApparentPlace.of(Angle.ofDegrees(10), Angle.ofDegrees(20));
        ApparentPlace there =
                ApparentPlace.of(Angle.ofDegrees(10), Angle.ofDegrees(20).plus(new Angle(1e-9)));
        assertThat(here.separation(there).radians()).isCloseTo(1e-9, within(1e-15));
    }

    @Test
    void starExactlyAtThePole_hasAnApparentPlace() {
        ApparentPlace place = MOMENT.apparent(CatalogueStar.fixed(Angle.ZERO, Angle.QUARTER_TURN));
        assertThat(place.declination().degrees()).isBetween(89.8, 90.0);
    }
}
