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

/** Equatorial to horizontal coordinates: Meeus's example 13.b and SOFA's t_hd2ae. See authorities/published. */
class HorizontalCoordinatesTest {
    private static final SkyTime MEEUS_TIME = SkyTime.of(Instant.parse("1987-04-10T19:21:00Z"));
    private static final Site MEEUS_SITE =
            new Site(dms(38, 55, 17), dms(77, 3, 56).negated(), 0);
    private static final ApparentPlace VENUS =
            ApparentPlace.of(hms(23, 9, 16.641), dms(6, 43, 11.61).negated());
    private static final double BOOK_TOLERANCE_DEG = 0.0002;

    private final ObservingMoment moment = ObservingMoment.of(MEEUS_SITE, MEEUS_TIME, Weather.AIRLESS);

    @Test
    void meeus13bVenusHourAngle() {
        assertThat(moment.hourAngle(VENUS).hourAngle().degrees())
                .isCloseTo(AuthorityTable.published("meeus13b_ha"), within(BOOK_TOLERANCE_DEG));
    }

    @Test
    void meeus13bVenusAzimuth_fromNorth_bookCountsFromSouth() {
        assertThat(moment.airless(VENUS).azimuth().degrees())
                .isCloseTo(AuthorityTable.published("meeus13b_az"), within(BOOK_TOLERANCE_DEG));
    }

    @Test
    void meeus13bVenusAltitude() {
        assertThat(moment.airless(VENUS).altitude().degrees())
                .isCloseTo(AuthorityTable.published("meeus13b_alt"), within(BOOK_TOLERANCE_DEG));
    }

    @Test
    void sofaHd2aeAtLatitudeThreeTenthsOfARadian() {
        ObservingMoment there =
                ObservingMoment.of(new Site(new Angle(0.3), Angle.ZERO, 0), MEEUS_TIME, Weather.AIRLESS);
        AirlessDirection direction = there.airless(new HourAnglePlace(new Angle(1.1), new Angle(1.2)));
        assertThat(direction.azimuth().radians()).isCloseTo(AuthorityTable.published("sofa_hd2ae_az"), within(1e-13));
        assertThat(direction.altitude().radians()).isCloseTo(AuthorityTable.published("sofa_hd2ae_el"), within(1e-14));
    }

    @Test
    void atTheNorthPoleAltitudeIsDeclination() {
        ObservingMoment pole = ObservingMoment.of(Site.ofDegrees(90, 0, 0), MEEUS_TIME, Weather.AIRLESS);
        assertThat(pole.airless(VENUS).altitude().degrees())
                .isCloseTo(VENUS.declination().degrees(), within(1e-12));
    }

    @Test
    void atTheSouthPoleAltitudeIsDeclinationReversed() {
        ObservingMoment pole = ObservingMoment.of(Site.ofDegrees(-90, 0, 2800), MEEUS_TIME, Weather.AIRLESS);
        assertThat(pole.airless(VENUS).altitude().degrees())
                .isCloseTo(-VENUS.declination().degrees(), within(1e-12));
    }

    @Test
    void elevatedPoleIsNorthAtLarkfellAndSouthAtTussockFlat_atTheLatitude() {
        for (Site site : new Site[] {Site.ofDegrees(54.60, -2.90, 240), Site.ofDegrees(-43.95, 170.40, 710)}) {
            ObservingMoment there = ObservingMoment.of(site, MEEUS_TIME, Weather.AIRLESS);
            AirlessDirection pole =
                    there.airless(new HourAnglePlace(Angle.ZERO, Angle.QUARTER_TURN.times(site.hemisphereSign())));
            assertThat(pole.altitude().degrees()).isCloseTo(site.poleAltitude().degrees(), within(1e-12));
            assertThat(pole.azimuth().minus(site.poleAzimuth()).wrappedSigned().degrees())
                    .isCloseTo(0, within(1e-12));
        }
    }

    @Test
    void positiveHourAngleIsWestInBothHemispheres() {
        for (double latitude : new double[] {54.60, -43.95}) {
            ObservingMoment there = ObservingMoment.of(Site.ofDegrees(latitude, 0, 0), MEEUS_TIME, Weather.AIRLESS);
            assertThat(there.airless(new HourAnglePlace(Angle.ofHours(3), Angle.ZERO))
                            .azimuth()
                            .degrees())
                    .isBetween(180.0, 360.0);
        }
    }
}
