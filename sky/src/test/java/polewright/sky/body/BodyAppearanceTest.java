package polewright.sky.body;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.sky.ReferenceStars;
import polewright.sky.angle.Angle;
import polewright.sky.place.ApparentPlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

class BodyAppearanceTest {
    private static ObservingMoment larkfell(String utc) {
        return ObservingMoment.of(
                Site.ofDegrees(54.60, -2.90, 240), SkyTime.of(Instant.parse(utc)), Weather.standardAt(240));
    }

    /** Common practice: 16.3′ in early January, 15.7′ in early July, to the tenth. */
    @ParameterizedTest
    @CsvSource({"2026-01-03T12:00:00Z, 16.26", "2026-07-06T12:00:00Z, 15.73"})
    void solarDiscIsLargestInJanuary(String utc, double arcmin) {
        assertThat(SolarSystem.appearance(SolarSystemBody.SUN, larkfell(utc))
                        .semiDiameter()
                        .arcminutes())
                .isCloseTo(arcmin, within(0.02));
    }

    /** IAU 1976 and common practice: the solar parallax's unit distance gives 959.2″ for a radius of 695 700 km. */
    @Test
    void sunAtOneAstronomicalUnitIs959Arcseconds() {
        var sun = new BodyAppearance(SolarSystemBody.SUN, ApparentPlace.of(Angle.ZERO, Angle.ZERO), 1);
        assertThat(sun.semiDiameter().arcseconds()).isCloseTo(959.2, within(0.1));
    }

    @Test
    void distanceOfTheMoonIsBetween356And407ThousandKilometres() {
        for (int day = 1; day <= 28; day++) {
            double km = SolarSystem.appearance(
                            SolarSystemBody.MOON, larkfell(String.format("2026-02-%02dT21:00:00Z", day)))
                    .distanceKm();
            // From the surface, so up to an Earth's radius outside the almanac's limits.
            assertThat(km).isBetween(356_400.0 - 6_400, 406_700.0 + 6_400);
        }
    }

    @Test
    void parallaxOfTheMoonBetweenOppositeSitesIsAboutADegree() {
        Instant utc = Instant.parse("2026-11-20T21:00:00Z");
        ApparentPlace north = SolarSystem.apparent(
                SolarSystemBody.MOON,
                ObservingMoment.of(Site.ofDegrees(54.60, -2.90, 240), SkyTime.of(utc), Weather.AIRLESS));
        ApparentPlace south = SolarSystem.apparent(
                SolarSystemBody.MOON,
                ObservingMoment.of(Site.ofDegrees(-43.95, 170.40, 710), SkyTime.of(utc), Weather.AIRLESS));
        // Two nearly antipodal sites are at most two Earth radii apart: 2 x 57'.
        assertThat(north.separation(south).degrees()).isBetween(0.5, 2.1);
    }

    @Test
    void starsAndPlanetsShareOneInterface() {
        ObservingMoment moment = larkfell("2026-11-20T21:00:00Z");
        SkyBody vega = new FixedStar("Vega", ReferenceStars.VEGA);
        SkyBody jupiter = SolarSystemBody.JUPITER;
        assertThat(Ephemeris.apparent(vega, moment)).isEqualTo(moment.apparent(ReferenceStars.VEGA));
        assertThat(Ephemeris.apparent(jupiter, moment))
                .isEqualTo(SolarSystem.apparent(SolarSystemBody.JUPITER, moment));
        assertThat(vega.label()).isEqualTo("Vega");
        assertThat(jupiter.label()).isEqualTo("Jupiter");
    }

    @Test
    void sunIsAtZeroDistanceFromItself() {
        ObservingMoment moment = larkfell("2026-06-20T12:00:00Z");
        assertThat(Ephemeris.sunDistance(SolarSystem.apparent(SolarSystemBody.SUN, moment), moment)
                        .arcseconds())
                .isCloseTo(0, within(1e-6));
    }

    /**
     * Common practice: the full Moon is opposite the Sun. Full on 2026 November 24 at 14:53 UT, by the same theories.
     */
    @Test
    void fullMoonIsOppositeTheSun() {
        ObservingMoment moment = larkfell("2026-11-24T15:00:00Z");
        assertThat(Ephemeris.sunDistance(SolarSystem.apparent(SolarSystemBody.MOON, moment), moment)
                        .degrees())
                .isGreaterThan(174);
    }

    @ParameterizedTest
    @CsvSource({"jupiter, JUPITER", "The Moon, MOON", "' SUN ', SUN", "the  sun, SUN"})
    void bodiesAreKnownByNameInAnyCase(String name, SolarSystemBody body) {
        assertThat(SolarSystemBody.named(name)).contains(body);
    }

    @ParameterizedTest
    @CsvSource({"vega", "''", "earth", "mo"})
    void otherNamesAreNotBodies(String name) {
        assertThat(SolarSystemBody.named(name)).isEmpty();
    }
}
