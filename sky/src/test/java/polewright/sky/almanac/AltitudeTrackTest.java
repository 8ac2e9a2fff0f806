package polewright.sky.almanac;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import polewright.sky.angle.Angle;
import polewright.sky.body.SolarSystem;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.time.Interval;

class AltitudeTrackTest {
    private static final List<Site> SITES = List.of(
            Site.ofDegrees(54.6, -2.9, 240),
            Site.ofDegrees(-43.95, 170.4, 710),
            Site.ofDegrees(0, 80, 3000),
            Site.ofDegrees(69.9, 25, 0),
            Site.ofDegrees(-69, -110, 100));

    /** The interpolated track against places computed for the exact instant. */
    @ParameterizedTest
    @EnumSource(
            value = SolarSystemBody.class,
            names = {"SUN", "MOON", "MERCURY", "MARS"})
    void altitudesMatchDirectComputation_toTwoArcseconds(SolarSystemBody body) {
        Random random = new Random(2);
        for (Site site : SITES) {
            Instant from = Instant.parse("2020-01-01T00:00:00Z").plusSeconds(random.nextInt(600_000_000));
            AltitudeTrack track = AltitudeTrack.of(body, site, new Interval(from, from.plus(Duration.ofDays(1))));
            for (int i = 0; i < 20; i++) {
                Instant at = from.plusSeconds(random.nextInt(86_400));
                ObservingMoment moment = AltitudeTrack.momentAt(site, at);
                double exact = moment.airless(SolarSystem.apparent(body, moment))
                        .altitude()
                        .arcseconds();
                assertThat(track.altitude(at).arcseconds()).isCloseTo(exact, within(2.0));
            }
        }
    }

    /** An altitude a hair above the Sun's lowest: both crossings, minutes apart, are found. */
    @Test
    void twoCrossingsMinutesApart_areBothFound() {
        Instant noon = Instant.parse("2026-06-10T12:00:00Z");
        Interval day = new Interval(noon, noon.plus(Duration.ofDays(1)));
        AltitudeTrack sun = AltitudeTrack.of(SolarSystemBody.SUN, SITES.get(0), day);
        AltitudeTrack.Extreme lowest = sun.lowest();
        List<Crossing> grazing = sun.crossings(lowest.altitude().plus(Angle.ofArcseconds(5)));
        assertThat(grazing.stream().map(Crossing::sense))
                .containsExactly(Crossing.Sense.SETTING, Crossing.Sense.RISING);
        assertThat(Duration.between(grazing.get(0).at(), grazing.get(1).at())).isLessThan(Duration.ofMinutes(10));
        assertThat(sun.crossings(lowest.altitude().minus(Angle.ofArcseconds(5))))
                .isEmpty();
    }

    /** Dip by the Nautical Almanac, 1.76′ √h (source at {@link LevelHorizon#seenFrom}): 1.8′, 5.6′ and 17.6′. */
    @Test
    void aHigherEyeSeesTheHorizonLower() {
        assertThat(LevelHorizon.seenFrom(1).dip().arcminutes()).isCloseTo(1.8, within(0.06));
        assertThat(LevelHorizon.seenFrom(10).dip().arcminutes()).isCloseTo(5.6, within(0.06));
        assertThat(LevelHorizon.seenFrom(100).dip().arcminutes()).isCloseTo(17.6, within(0.06));
        Instant now = Instant.parse("2026-03-20T12:00:00Z");
        Interval level =
                Darkness.comingAt(SITES.get(0), now).below(SunDepth.SUNSET).orElseThrow();
        Interval fromHill = Darkness.comingAt(SITES.get(0), now, LevelHorizon.seenFrom(300))
                .below(SunDepth.SUNSET)
                .orElseThrow();
        assertThat(Duration.between(level.from(), fromHill.from()).toSeconds()).isBetween(180L, 240L);
    }
}
