package polewright.simulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.LongStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import polewright.alignment.allowance.DiscAllowance;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStar;
import polewright.sky.atlas.NamedStars;
import polewright.sky.place.Site;

/**
 * Nights without advice, by eye and with a camera, and the same nights with it. The benefit of the advice is measured
 * on thousands under {@code bench/}.
 */
class PlainRoutineTest {
    private static final int NIGHTS = 40;
    private static final DiscAllowance TOLERATED = new DiscAllowance(Angle.ofArcminutes(8));
    private static final List<NamedStar> STARS = NamedStars.bundled().all();

    private static List<List<PlainRoutine.Moment>> plain = List.of();

    @BeforeAll
    static void play() {
        plain = LongStream.range(0, NIGHTS)
                .mapToObj(seed -> PlainRoutine.play(setting(seed), random(seed)))
                .toList();
    }

    private static RandomGenerator random(long seed) {
        return RandomGeneratorFactory.of("L64X128MixRandom").create(40_000 + seed);
    }

    /** By eye and by camera alternately, north and south alternately. */
    private static RehearsedNight.Setting setting(long seed) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(30_000 + seed);
        double size = 1 + 7 * random.nextDouble();
        double way = 2 * Math.PI * random.nextDouble();
        Site site = Site.ofDegrees((seed / 2 % 2 == 0 ? 1 : -1) * (15 + 50 * random.nextDouble()), 0, 300);
        Rig rig = Rig.typicalForkOnWedge()
                .withCameras(seed % 2 == 0 ? List.of() : List.of(new Camera("guide camera", 240, 3.75, 1280, 960)));
        HiddenWedge wedge = HiddenWedge.of(
                site,
                rig,
                new AxisOffset(Angle.ofDegrees(size * Math.sin(way)), Angle.ofDegrees(size * Math.cos(way))),
                random);
        Instant from = Instant.parse("2026-03-20T20:00:00Z").plusSeconds(86400L * (long) (10 * random.nextDouble()));
        return new RehearsedNight.Setting("somewhere", wedge, TOLERATED, from, STARS, List.of());
    }

    private static <T> T last(List<T> list) {
        return list.get(list.size() - 1);
    }

    @Test
    void everyNight_stopsClampedAndMeasured() {
        assertThat(plain).allSatisfy(night -> {
            List<PlainRoutine.Act> acts =
                    night.stream().map(PlainRoutine.Moment::act).toList();
            assertThat(last(acts)).isEqualTo(PlainRoutine.Act.STOPPED);
            assertThat(acts.subList(acts.lastIndexOf(PlainRoutine.Act.CLAMPED) + 1, acts.size() - 1))
                    .isNotEmpty()
                    .containsOnly(PlainRoutine.Act.MEASURED);
        });
    }

    @Test
    void mostNights_endWithinTheTolerance() {
        long good = plain.stream()
                .filter(night -> TOLERATED.contains(last(night).wedge().offset()))
                .count();
        assertThat(good).isGreaterThanOrEqualTo(NIGHTS - 4);
    }

    @Test
    void withCamera_everyInsufficientMeasurement_isFollowedByATurn() {
        for (int seed = 1; seed < NIGHTS; seed += 2) {
            List<PlainRoutine.Moment> night = plain.get(seed);
            for (int i = 2; i < night.size(); i++) {
                if (night.get(i).act() == PlainRoutine.Act.MEASURED) {
                    assertThat(night.get(i - 1).act()).isNotEqualTo(PlainRoutine.Act.MEASURED);
                }
            }
        }
    }

    /** Slewing 2 minutes, three frames 2 minutes, to the wedge 1 minute, two screws half a minute each. */
    @Test
    void framesAndTurnOfBothScrews_takeSixMinutes() {
        List<PlainRoutine.Moment> night = plain.get(1);
        assertThat(night.get(2).act()).isEqualTo(PlainRoutine.Act.TURNED);
        assertThat(Duration.between(night.get(0).at(), night.get(2).at())).isEqualTo(Duration.ofMinutes(6));
    }

    @Test
    void sameSeed_givesTheSameNight() {
        assertThat(PlainRoutine.play(setting(2), random(2))).isEqualTo(plain.get(2));
    }

    @Test
    void withAdvice_theSameNightsAreShorterOverall_andEndGoodEnough() {
        List<List<RehearsedNight.Moment>> advised = LongStream.range(0, NIGHTS)
                .mapToObj(seed -> RehearsedNight.play(setting(seed), Optional.empty(), moment -> {}, random(seed)))
                .toList();
        double advisedMinutes = advised.stream()
                .mapToDouble(night ->
                        minutes(night.get(0).event().at(), last(night).event().at()))
                .average()
                .orElseThrow();
        double plainMinutes = plain.stream()
                .mapToDouble(night -> minutes(night.get(0).at(), last(night).at()))
                .average()
                .orElseThrow();
        assertThat(advisedMinutes).isLessThan(0.9 * plainMinutes);
        assertThat(advised.stream()
                        .filter(night -> TOLERATED.contains(last(night).wedge().offset()))
                        .count())
                .isGreaterThanOrEqualTo(NIGHTS - 4);
    }

    private static double minutes(Instant from, Instant to) {
        return Duration.between(from, to).toSeconds() / 60.0;
    }
}
