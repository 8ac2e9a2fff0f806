package polewright.simulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.LongStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.FollowedScrews;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.fix.AxisState;
import polewright.alignment.sighting.TurnedFrames;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Rig;
import polewright.session.event.NightEvent;
import polewright.simulation.camera.CameraOptics;
import polewright.simulation.camera.Detector;
import polewright.simulation.camera.SimulatedCamera;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStar;
import polewright.sky.atlas.NamedStars;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.place.Site;

/**
 * Whole nights with rendered frames, their stars found and matched: a small camera in the home position, either
 * hemisphere.
 */
@Tag("slow")
class NightsOfPhotographsTest {
    private static final int NIGHTS = 16;
    // Chi-squared with 2 degrees of freedom: 99.9 % lie under −2 ln 0.001.
    private static final double REGION_999 = -2 * Math.log(0.001);

    private static List<List<RehearsedNight.Moment>> nights = List.of();

    @BeforeAll
    static void play() {
        DrawnSky sky = DrawnSky.of(StarAtlas.bundled());
        List<NamedStar> stars = NamedStars.bundled().all();
        nights = LongStream.rangeClosed(1, NIGHTS)
                .mapToObj(seed -> night(seed, sky, stars))
                .toList();
    }

    private static List<RehearsedNight.Moment> night(long seed, DrawnSky sky, List<NamedStar> stars) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(90_000 + seed);
        SimulatedCamera camera =
                SimulatedCamera.of("small", CameraOptics.clean(100, 40, 7), Detector.flawless(480, 360, 6));
        double size = 8 * Math.sqrt(random.nextDouble());
        double way = 2 * Math.PI * random.nextDouble();
        Site site = Site.ofDegrees(
                (seed % 2 == 0 ? 1 : -1) * (20 + 45 * random.nextDouble()), 0, 1500 * random.nextDouble());
        RehearsedNight.Setting setting = new RehearsedNight.Setting(
                "somewhere",
                HiddenWedge.of(
                        site,
                        Rig.typicalForkOnWedge().withCameras(List.of(camera.inRig("guide camera"))),
                        new AxisOffset(Angle.ofDegrees(size * Math.sin(way)), Angle.ofDegrees(size * Math.cos(way))),
                        random),
                DiscAllowance.VISUAL,
                Instant.parse("2026-03-20T21:00:00Z").plusSeconds(86400L * (long) (10 * random.nextDouble())),
                stars,
                List.of());
        CameraOnTube onTube = CameraOnTube.ofDrawnFrames(camera, sky, setting, random, photograph -> {});
        return RehearsedNight.play(setting, Optional.of(onTube), moment -> {}, random);
    }

    private static RehearsedNight.Moment last(List<RehearsedNight.Moment> night) {
        return night.get(night.size() - 1);
    }

    private static double normalisedSquare(RehearsedNight.Moment moment) {
        AxisState state = moment.night().fix().state();
        return state.offsetCovariance()
                .normalisedSquare(state.offset().minus(moment.wedge().offset()));
    }

    private static boolean byFrames(RehearsedNight.Moment moment) {
        return moment.event().event() instanceof NightEvent.SightingTaken taken
                && taken.sighting() instanceof TurnedFrames;
    }

    @Test
    void everyNight_stopsWithAGoodEnoughAxis() {
        assertThat(nights).allSatisfy(night -> {
            assertThat(last(night).night().advice()).isInstanceOf(Advice.Stop.class);
            assertThat(last(night)
                            .night()
                            .allowance()
                            .contains(last(night).wedge().offset()))
                    .isTrue();
        });
    }

    @Test
    void fixAfterEveryFrame_isAsAccurateAsStated() {
        List<Double> squares = nights.stream()
                .flatMap(List::stream)
                .filter(NightsOfPhotographsTest::byFrames)
                .map(NightsOfPhotographsTest::normalisedSquare)
                .toList();
        assertThat(squares)
                .hasSizeGreaterThan(3 * NIGHTS / 2)
                .allSatisfy(s -> assertThat(s).isLessThan(REGION_999));
        // The stated uncertainty of the mount's own shifts is larger than their size here, so the mean may be well
        // under 1, but not over.
        assertThat(squares.stream().mapToDouble(s -> s).average().orElseThrow() / 2)
                .isBetween(0.05, 1.3);
    }

    @Test
    void correctFrames_raiseNoFalseAlarm() {
        assertThat(nights)
                .allSatisfy(night -> assertThat(last(night).night().fix().agreements())
                        .noneMatch(agreement -> agreement.contradictory()));
    }

    @Test
    void framesWhileTurning_bringTheAxisClose() {
        List<RehearsedNight.Moment> turned = nights.stream()
                .flatMap(List::stream)
                .filter(moment -> moment.look().isPresent())
                .toList();
        assertThat(turned).hasSizeGreaterThan(2 * NIGHTS).allSatisfy(moment -> {
            FrameWhileTurning look = moment.look().orElseThrow();
            // Each frame must record where the axis was then.
            assertThat(look.soFar()
                            .now()
                            .axis()
                            .separation(moment.wedge().pointing())
                            .arcseconds())
                    .isLessThan(40);
            assertThat(look.soFar().findings()).isEmpty();
        });
        for (List<RehearsedNight.Moment> night : nights) {
            for (int i = 1; i < night.size(); i++) {
                if (night.get(i).isAdviceFollowed()
                        && byFrames(night.get(i))
                        && night.get(i - 1).look().isPresent()) {
                    FrameWhileTurning last = night.get(i - 1).look().get();
                    FollowedScrews.Orders left = last.screws().orders();
                    boolean noTurnIsLeft = Math.abs(left.azimuth().remaining()) < 0.15
                            && Math.abs(left.altitude().remaining()) < 0.15;
                    // Half of the tolerance is left for the clamps.
                    boolean isNear =
                            night.get(i - 1).wedge().offset().distance().arcminutes() < 2.6;
                    assertThat(noTurnIsLeft || isNear).isTrue();
                }
            }
        }
    }
}
