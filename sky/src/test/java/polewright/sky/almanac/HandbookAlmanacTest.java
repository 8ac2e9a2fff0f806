package polewright.sky.almanac;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import polewright.sky.angle.Angle;
import polewright.sky.body.PlanetAppearance;
import polewright.sky.body.SolarSystem;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.AirlessDirection;
import polewright.sky.place.ApparentPlace;
import polewright.sky.place.FieldRotation;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.Interval;
import polewright.sky.time.SkyTime;

/**
 * Worked examples of J. Meeus, <i>Astronomical Algorithms</i>, second edition (1998), pp. 98, 103, 284 and 347; figures
 * as in the tests of soniakeys/meeus, v3, bfbd9ac2c7f7. His places are geocentric.
 */
class HandbookAlmanacTest {
    private static final Site BOSTON = Site.ofDegrees(42.3333, -71.0833, 0);
    private static final Instant DAY_OF_15A = Instant.parse("1988-03-20T00:00:00Z");

    /** Example 15.a: Venus at Boston, 1988 March 20, fractions of the day in Universal Time. */
    @Test
    void example15a_risingTransitAndSettingOfVenus() {
        Interval day = new Interval(DAY_OF_15A, DAY_OF_15A.plus(Duration.ofDays(1)));
        List<Crossing> crossings = RisingAndSetting.of(SolarSystemBody.VENUS, BOSTON, day, LevelHorizon.ALMANAC);
        assertThat(crossings.stream().map(Crossing::sense))
                .containsExactly(Crossing.Sense.SETTING, Crossing.Sense.RISING);
        // The parallax of Venus, 12″ that day, shifts these times by a second; his rounding of a time by another.
        assertThat(dayFraction(crossings.get(0).at())).isCloseTo(0.12130, within(5e-5));
        assertThat(dayFraction(crossings.get(1).at())).isCloseTo(0.51766, within(5e-5));
        Instant transit =
                AltitudeTrack.of(SolarSystemBody.VENUS, BOSTON, day).transits().get(0);
        assertThat(dayFraction(transit)).isCloseTo(0.81980, within(3e-5));
    }

    private static double dayFraction(Instant at) {
        return Duration.between(DAY_OF_15A, at).toMillis() / 86_400_000.0;
    }

    /**
     * Example 48.a: the Moon on 1992 April 12 at 0h TD (58.184 s later than UTC). At a site with the Moon in the zenith
     * its direction is the same as from the Earth's centre, so its phase is the same too.
     */
    @Test
    void example48a_illuminatedFractionOfTheMoon() {
        Instant at = Instant.parse("1992-04-11T23:59:01.816Z");
        ApparentPlace moon = SolarSystem.apparent(SolarSystemBody.MOON, moment(Site.ofDegrees(13.77, 0, 0), at));
        Angle greenwich = moment(Site.ofDegrees(0, 0, 0), at).siderealTime();
        Site below = new Site(
                moon.declination(), moon.rightAscension().minus(greenwich).wrappedSigned(), 0);
        ObservingMoment there = moment(below, at);
        assertThat(there.airless(SolarSystem.apparent(SolarSystemBody.MOON, there))
                        .altitude()
                        .degrees())
                .isGreaterThan(88.5);
        LunarPhase phase = LunarPhase.at(there);
        assertThat(phase.litShare()).isCloseTo(0.6786, within(2e-4));
        assertThat(phase.phaseAngle().degrees()).isCloseTo(69.0756, within(0.03));
        assertThat(phase.isWaxing()).isTrue();
    }

    /** Example 41.a: Venus on 1992 December 20 at 0h TD: phase angle 72.96°, illuminated fraction 0.647. */
    @Test
    void example41a_illuminatedFractionOfVenus() {
        ObservingMoment moment = moment(BOSTON, Instant.parse("1992-12-19T23:59:00.816Z"));
        PlanetAppearance venus = PlanetAppearance.at(SolarSystemBody.VENUS, moment);
        assertThat(venus.litShare()).isCloseTo(0.647, within(5e-4));
        assertThat(venus.phaseAngle().degrees()).isCloseTo(72.96, within(0.02));
    }

    /**
     * Formula 14.1, the parallactic angle: tan q = sin H / (tan φ cos δ − sin δ cos H); its rate is the field rotation.
     */
    @Test
    void formula14_1_rateOfParallacticAngle_equalsFieldRotation() {
        for (double latitude : new double[] {54.6, -43.95, 20}) {
            Site site = Site.ofDegrees(latitude, 0, 0);
            ObservingMoment moment = moment(site, DAY_OF_15A);
            for (double hourAngle = -80; hourAngle <= 80; hourAngle += 20) {
                HourAnglePlace place =
                        new HourAnglePlace(Angle.ofDegrees(hourAngle), Angle.ofDegrees(latitude / 2 - 7));
                AirlessDirection direction = moment.airless(place);
                double minute = Math.toRadians(15.041067 / 60) / 2;
                double turned = parallactic(site, place, minute) - parallactic(site, place, -minute);
                double rate = new Angle(turned).wrappedSigned().radians() * 60;
                assertThat(FieldRotation.perHour(site, direction).degrees())
                        .as("latitude %s, hour angle %s", latitude, hourAngle)
                        .isCloseTo(Math.toDegrees(rate), within(0.002));
            }
        }
    }

    private static double parallactic(Site site, HourAnglePlace place, double laterRad) {
        double h = place.hourAngle().radians() + laterRad;
        double declination = place.declination().radians();
        return Math.atan2(
                Math.sin(h),
                Math.tan(site.latitude().radians()) * Math.cos(declination) - Math.sin(declination) * Math.cos(h));
    }

    private static ObservingMoment moment(Site site, Instant at) {
        return ObservingMoment.of(site, SkyTime.of(at), Weather.AIRLESS);
    }
}
