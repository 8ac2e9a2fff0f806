package polewright.bench;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.random.RandomGenerator;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.StarDrift;
import polewright.alignment.work.Work;
import polewright.alignment.work.WorkPreset;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;
import polewright.session.BrightStars;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.simulation.HiddenWedge;
import polewright.simulation.SimulatedObserver;
import polewright.sky.atlas.NamedStar;
import polewright.sky.atlas.NamedStars;
import polewright.sky.body.FixedStar;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/**
 * Fix and advice for a night of 300 events, for two kinds of work, with the earlier sightings and the zone already
 * computed: the cost of each further event.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class AdviceBenchmark {
    private static final int EVENTS = 300;
    private static final int SECONDS_APART = 90;
    private static final Site SITE = Site.ofDegrees(54.60, -2.90, 240);
    private static final Instant EVENING = Instant.parse("2026-11-25T18:00:00Z");

    /** The predominant kind of sighting. */
    public enum Mix {
        DRIFTS,
        STILL_POINTS_AND_DRIFTS,
        MANY_TURNS,
        CONTRADICTIONS,
        WITHDRAWALS
    }

    @Param({"DRIFTS", "STILL_POINTS_AND_DRIFTS", "MANY_TURNS", "CONTRADICTIONS", "WITHDRAWALS"})
    public Mix mix = Mix.DRIFTS;

    private List<LoggedEvent> events = List.of();
    private final NightState.ModelCache models = new NightState.ModelCache();

    /** The night so far. */
    @Setup
    public void playNight() {
        events = new Playing(mix).events();
        NightState.of(events, events.get(events.size() - 1).at(), models);
    }

    @Benchmark
    public NightState fixAndAdvice() {
        return NightState.of(events, events.get(events.size() - 1).at(), models);
    }

    /** An observer who keeps measuring and turning, regardless of the advice. */
    private static final class Playing {
        private final Mix mix;
        private final RandomGenerator random = RandomNight.random(300);
        private final Weather weather = Weather.standardAt(SITE.heightMetres());
        private final Rig rig =
                Rig.typicalForkOnWedge().withCameras(List.of(new Camera("guide camera", 240, 3.75, 1280, 960)));
        private final SimulatedObserver observer = new SimulatedObserver(weather, random);
        private final List<LoggedEvent> events = new ArrayList<>();
        private HiddenWedge wedge = HiddenWedge.of(SITE, rig, AxisOffset.ofArcminutes(70, -50), random);

        private Playing(Mix mix) {
            this.mix = mix;
        }

        private List<LoggedEvent> events() {
            logged(new NightEvent.Begun("Larkfell", SITE, weather, rig, DiscAllowance.VISUAL));
            logged(new NightEvent.WorkSet(
                    new Work(List.of(WorkPreset.PLANETS.with(rig), WorkPreset.LONG_GUIDED_SUBS.with(rig)))));
            sighted(observer.compass(wedge, now(), CompassBearing.USUAL_SIGMA));
            sighted(observer.scale(wedge, now(), LevelledScale.USUAL_SIGMA));
            while (events.size() < EVENTS) {
                continueNight(events.size());
            }
            return List.copyOf(events);
        }

        private void continueNight(int number) {
            boolean turn = number % (mix == Mix.MANY_TURNS ? 2 : 25) == 0;
            if (turn) {
                double azimuth = Math.rint(8 * random.nextGaussian()) / 8;
                double altitude = Math.rint(8 * random.nextGaussian()) / 8;
                wedge = wedge.turned(azimuth, altitude, random);
                logged(new NightEvent.ScrewsTurned(azimuth, altitude));
            } else if (mix == Mix.WITHDRAWALS && number % 5 == 0) {
                logged(new NightEvent.Withdrawn(events.get(number - 1).seq()));
            } else if (mix == Mix.STILL_POINTS_AND_DRIFTS && number % 2 == 0) {
                Optic finder = rig.widestOptic().orElseThrow();
                sighted(observer.stillPoint(
                        wedge,
                        now(),
                        fixed(BrightStars.poleStar(moment()).orElseThrow().name()),
                        finder));
            } else {
                StarDrift drift = drift();
                boolean wrong = mix == Mix.CONTRADICTIONS && number % 60 == 7;
                sighted(
                        wrong
                                ? new StarDrift(
                                        drift.at(),
                                        drift.length(),
                                        drift.star(),
                                        drift.drift(),
                                        drift.direction().reversed(),
                                        drift.sigma())
                                : drift);
            }
        }

        private StarDrift drift() {
            var up = BrightStars.upAt(moment());
            String name = up.get(1 + random.nextInt(up.size() - 1)).name();
            return observer.drift(
                    wedge, now(), fixed(name), java.time.Duration.ofMinutes(5), StarDrift.usualSigma(rig));
        }

        private ObservingMoment moment() {
            return ObservingMoment.of(SITE, SkyTime.of(now()), weather);
        }

        private static FixedStar fixed(String name) {
            Optional<NamedStar> star = NamedStars.bundled().find(name);
            return new FixedStar(name, star.orElseThrow().place());
        }

        private Instant now() {
            return EVENING.plusSeconds((long) SECONDS_APART * events.size());
        }

        private void sighted(Sighting sighting) {
            logged(new NightEvent.SightingTaken(sighting));
        }

        private void logged(NightEvent event) {
            events.add(new LoggedEvent(events.size() + 1L, now(), event));
        }
    }
}
