package polewright.simulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.LongStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import polewright.alignment.advice.Advice;
import polewright.alignment.allowance.DiscAllowance;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Rig;
import polewright.session.event.EventKind;
import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStar;
import polewright.sky.atlas.NamedStars;
import polewright.sky.place.Site;

/** Whole nights with a guide camera on the tube, from up to 15° off to stop. */
@Tag("slow")
class NightsWithACameraTest {
    private static final int NIGHTS = 40;
    private static List<List<RehearsedNight.Moment>> nights = List.of();

    @BeforeAll
    static void play() {
        List<NamedStar> stars = NamedStars.bundled().all();
        nights = LongStream.rangeClosed(1, NIGHTS)
                .mapToObj(seed -> night(seed, stars))
                .toList();
    }

    private static List<RehearsedNight.Moment> night(long seed, List<NamedStar> stars) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(70_000 + seed);
        double size = 15 * Math.sqrt(random.nextDouble());
        double way = 2 * Math.PI * random.nextDouble();
        Site site = Site.ofDegrees((seed % 2 == 0 ? 1 : -1) * (20 + 45 * random.nextDouble()), 0, 300);
        Rig rig = Rig.typicalForkOnWedge().withCameras(List.of(new Camera("guide camera", 240, 3.75, 1280, 960)));
        HiddenWedge wedge = HiddenWedge.of(
                site,
                rig,
                new AxisOffset(Angle.ofDegrees(size * Math.sin(way)), Angle.ofDegrees(size * Math.cos(way))),
                random);
        Instant from = Instant.parse("2026-03-20T21:00:00Z").plusSeconds(86400L * (long) (10 * random.nextDouble()));
        return RehearsedNight.play("somewhere", wedge, DiscAllowance.VISUAL, from, stars, random);
    }

    private static RehearsedNight.Moment last(List<RehearsedNight.Moment> night) {
        return night.get(night.size() - 1);
    }

    private static long count(List<RehearsedNight.Moment> night, EventKind kind) {
        return night.stream()
                .filter(m -> EventKind.of(m.event().event()) == kind)
                .count();
    }

    @Test
    void everyNight_stopsWithAGoodEnoughAxis() {
        assertThat(nights).allSatisfy(n -> assertThat(last(n).night().advice()).isInstanceOf(Advice.Stop.class));
        long good = nights.stream()
                .filter(n ->
                        last(n).night().allowance().contains(last(n).wedge().offset()))
                .count();
        assertThat(good).isGreaterThanOrEqualTo(NIGHTS - 2);
    }

    @Test
    void onlyFramesAreUsed_andFewSuffice() {
        double framesANight = nights.stream()
                .mapToLong(n -> count(n, EventKind.FRAMES))
                .average()
                .orElseThrow();
        assertThat(framesANight).isLessThan(9);
        assertThat(nights)
                .allSatisfy(n -> assertThat(n)
                        .filteredOn(m -> m.event().event() instanceof NightEvent.SightingTaken)
                        .allSatisfy(
                                m -> assertThat(EventKind.of(m.event().event())).isEqualTo(EventKind.FRAMES)));
    }

    @Test
    void correctFrames_raiseNoFalseAlarm() {
        long alarms = nights.stream()
                .flatMap(n -> last(n).night().fix().agreements().stream())
                .filter(a -> a.contradictory())
                .count();
        assertThat(alarms).isZero();
    }
}
