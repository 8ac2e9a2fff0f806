package polewright.sky.place;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import org.jastronomy.jsofa.JSOFA;
import org.junit.jupiter.api.Test;
import polewright.sky.AuthorityTable;
import polewright.sky.angle.Angle;
import polewright.sky.time.JulianDate;
import polewright.sky.time.SkyTime;

/**
 * Sidereal time against J. Meeus, Astronomical Algorithms (2nd edition), examples 12.a and 12.b, and SOFA's t_gst06a.
 * See authorities/published. The book's mean sidereal time is that of 1982; IAU 2006 is 0.0033 s ahead of it in 1987
 * (mean) and 0.0038 s (apparent), by pyerfa.
 */
class SiderealTimeTest {
    private static final Site GREENWICH = Site.ofDegrees(0, 0, 0);
    private static final double SECONDS_PER_HOUR = 3600;

    private static ObservingMoment at(String utc) {
        return ObservingMoment.of(GREENWICH, SkyTime.of(Instant.parse(utc)), Weather.AIRLESS);
    }

    private static double meanSeconds(ObservingMoment moment) {
        JulianDate tt = moment.tt();
        Angle equationOfEquinoxes = new Angle(JSOFA.jauEe06a(tt.day(), tt.fraction()));
        return moment.siderealTime().minus(equationOfEquinoxes).hours() * SECONDS_PER_HOUR;
    }

    private static double seconds(String id) {
        return AuthorityTable.publishedAngle(id).hours() * SECONDS_PER_HOUR;
    }

    @Test
    void meeus12aMeanTimeAtMidnight() {
        assertThat(meanSeconds(at("1987-04-10T00:00:00Z")))
                .isCloseTo(seconds("meeus12a_mean") + 0.0033, within(0.0001));
    }

    @Test
    void meeus12aApparentTimeAtMidnight() {
        assertThat(at("1987-04-10T00:00:00Z").siderealTime().hours() * SECONDS_PER_HOUR)
                .isCloseTo(seconds("meeus12a_app") + 0.0038, within(0.0002));
    }

    @Test
    void meeus12bMeanTimeInTheEvening() {
        assertThat(meanSeconds(at("1987-04-10T19:21:00Z"))).isCloseTo(seconds("meeus12b") + 0.0033, within(0.0001));
    }

    @Test
    void sofaGst06aAtTheStartOf2006() {
        // SOFA's test takes TT = UT1; ours is 65 s later, during which the equinox moves 0.0002".
        assertThat(at("2006-01-01T00:00:00Z").siderealTime().radians())
                .isCloseTo(AuthorityTable.published("sofa_gst06a"), within(2e-9));
    }

    @Test
    void eastwardSitesHaveLaterTime() {
        SkyTime time = SkyTime.of(Instant.parse("2026-11-20T21:00:00Z"));
        Angle west = ObservingMoment.of(Site.ofDegrees(54.6, -2.9, 240), time, Weather.AIRLESS)
                .siderealTime();
        Angle east = ObservingMoment.of(Site.ofDegrees(-43.95, 170.4, 710), time, Weather.AIRLESS)
                .siderealTime();
        assertThat(east.minus(west).wrappedPositive().degrees()).isCloseTo(173.3, within(1e-7));
    }

    @Test
    void oneSecondOfUt1MinusUtcIsFifteenArcseconds() {
        Instant utc = Instant.parse("2026-11-20T21:00:00Z");
        Angle without =
                ObservingMoment.of(GREENWICH, SkyTime.of(utc), Weather.AIRLESS).siderealTime();
        Angle with = ObservingMoment.of(GREENWICH, new SkyTime(utc, 0.9), Weather.AIRLESS)
                .siderealTime();
        assertThat(with.minus(without).arcseconds()).isCloseTo(0.9 * 15.041067, within(1e-4));
    }
}
