package polewright.sky.almanac;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.sky.AuthorityTable;
import polewright.sky.AuthorityTable.Row;
import polewright.sky.angle.Angle;
import polewright.sky.body.PlanetAppearance;
import polewright.sky.body.SolarSystem;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.ApparentPlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/** Topocentric places from fifty sites, against Skyfield with JPL's DE405. See authorities/risings. */
@Tag("slow")
class MoonAndPlanetsAgainstSkyfieldTest {
    static Stream<Row> places() {
        return AuthorityTable.rows("risings/moments.csv");
    }

    private static ObservingMoment moment(Row row) {
        Site site = Site.ofDegrees(row.number("lat_deg"), row.number("lon_east_deg"), row.number("height_m"));
        return ObservingMoment.of(site, SkyTime.of(Instant.parse(row.text("utc"))), Weather.AIRLESS);
    }

    /** The requirement is one arcminute; these arcseconds are what the theories and UT1−UTC leave. */
    @ParameterizedTest
    @MethodSource("places")
    void positionAgreesWithSkyfield_withinAQuarterArcminute(Row row) {
        ObservingMoment moment = moment(row);
        SolarSystemBody body = SolarSystemBody.valueOf(row.text("body"));
        ApparentPlace expected = ApparentPlace.of(
                Angle.ofDegrees(row.number("ra_apparent_deg")), Angle.ofDegrees(row.number("dec_apparent_deg")));
        ApparentPlace found = SolarSystem.apparent(body, moment);
        assertThat(found.separation(expected).arcminutes()).isLessThan(0.25);
        ApparentPlace sun = SolarSystem.apparent(SolarSystemBody.SUN, moment);
        assertThat(found.separation(sun).degrees()).isCloseTo(row.number("sun_separation_deg"), within(0.01));
        assertThat(MoonTonight.separation(found, moment).degrees())
                .isCloseTo(row.number("moon_separation_deg"), within(0.01));
    }

    /** Light time to the Sun and the epoch of the poles make a difference of a hundredth of a magnitude. */
    @ParameterizedTest
    @MethodSource("places")
    void magnitudeAgreesWithSkyfield(Row row) {
        if (row.text("magnitude").isEmpty()) {
            return;
        }
        PlanetAppearance planet = PlanetAppearance.at(SolarSystemBody.valueOf(row.text("body")), moment(row));
        assertThat(planet.magnitude().orElseThrow()).isCloseTo(row.number("magnitude"), within(0.01));
        assertThat(planet.elongation().degrees()).isCloseTo(row.number("sun_separation_deg"), within(0.01));
    }

    @ParameterizedTest
    @MethodSource("places")
    void lunarPhaseAgreesWithSkyfield(Row row) {
        if (row.text("phase_angle_deg").isEmpty()) {
            return;
        }
        LunarPhase phase = LunarPhase.at(moment(row));
        assertThat(phase.phaseAngle().degrees()).isCloseTo(row.number("phase_angle_deg"), within(0.02));
        assertThat(phase.litShare()).isCloseTo(row.number("lit_share"), within(0.0002));
        assertThat(phase.elongation().degrees()).isCloseTo(row.number("sun_separation_deg"), within(0.01));
    }
}
