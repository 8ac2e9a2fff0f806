package polewright.sky.place;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import polewright.sky.angle.Angle;
import polewright.sky.time.SkyTime;

/** Moments that take over the celestial pole of another one, against moments of their own. */
class SharedPoleTest {
    private static final Site NORTH = Site.ofDegrees(54.60, -2.90, 240);
    private static final Site SOUTH = Site.ofDegrees(-43.95, 170.40, 710);
    private static final Weather WEATHER = Weather.standardAt(240);

    @Test
    void anotherSiteAtTheSameInstant_isExact() {
        Random random = new Random(1);
        for (int i = 0; i < 20; i++) {
            SkyTime time = time(random);
            CatalogueStar star = star(random);
            ObservingMoment own = ObservingMoment.of(SOUTH, time, WEATHER);
            ObservingMoment shared = ObservingMoment.of(NORTH, time, WEATHER).at(SOUTH);
            assertThat(shared.apparent(star)).isEqualTo(own.apparent(star));
            assertThat(shared.siderealTime()).isEqualTo(own.siderealTime());
        }
    }

    @Test
    void anotherTimeWithin15Hours_isGoodToAFifthOfAnArcsecond() {
        Random random = new Random(2);
        for (int i = 0; i < 200; i++) {
            SkyTime time = time(random);
            CatalogueStar star = star(random);
            SkyTime other = SkyTime.of(time.utc().plusSeconds(random.nextInt(30 * 3600) - 15 * 3600));
            ObservingMoment own = ObservingMoment.of(NORTH, other, WEATHER);
            ObservingMoment shared = ObservingMoment.of(NORTH, time, WEATHER).sameNight(other);
            assertThat(shared.time()).isEqualTo(other);
            assertThat(new Angle(Vector3D.angle(direction(shared, star), direction(own, star))).arcseconds())
                    .isCloseTo(0, within(0.2));
        }
    }

    private static Vector3D direction(ObservingMoment moment, CatalogueStar star) {
        return moment.airless(moment.apparent(star)).enu();
    }

    private static SkyTime time(Random random) {
        return SkyTime.of(Instant.parse("2000-01-01T00:00:00Z").plusSeconds(random.nextInt(1_500_000_000)));
    }

    private static CatalogueStar star(Random random) {
        return CatalogueStar.fixed(
                Angle.ofHours(24 * random.nextDouble()), new Angle(Math.asin(2 * random.nextDouble() - 1)));
    }
}
