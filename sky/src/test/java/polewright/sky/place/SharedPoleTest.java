package polewright.sky.place;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.Random;
import org.junit.jupiter.api.Test;
import polewright.sky.angle.Angle;
import polewright.sky.time.SkyTime;

/** A moment that shares the celestial pole of another, compared with one that computes its own. */
class SharedPoleTest {
    private static final Site NORTH = Site.ofDegrees(54.60, -2.90, 240);
    private static final Site SOUTH = Site.ofDegrees(-43.95, 170.40, 710);
    private static final Weather WEATHER = Weather.standardAt(240);

    @Test
    void anotherSiteAtTheSameInstant_givesIdenticalPlaces() {
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

    private static SkyTime time(Random random) {
        return SkyTime.of(Instant.parse("2000-01-01T00:00:00Z").plusSeconds(random.nextInt(1_500_000_000)));
    }

    private static CatalogueStar star(Random random) {
        return CatalogueStar.fixed(
                Angle.ofHours(24 * random.nextDouble()), new Angle(Math.asin(2 * random.nextDouble() - 1)));
    }
}
