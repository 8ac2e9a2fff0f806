package polewright.bench;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import polewright.mount.rig.Rig;
import polewright.planning.tonight.Evening;
import polewright.planning.tonight.Observing;
import polewright.planning.tonight.Purpose;
import polewright.planning.tonight.Target;
import polewright.planning.tonight.TonightsPlan;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.Horizon;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** The plan of a whole winter night at Larkfell, with a horizon profile, for a number of objects all over the sky. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 3, time = 2)
public class TonightBenchmark {
    private static final Site LARKFELL = Site.ofDegrees(54.6, -2.9, 240);

    @Param({"1000", "3000", "10000"})
    private int objects;

    private List<Target> targets = List.of();

    @Setup(Level.Trial)
    public void drawObjects() {
        Random random = new Random(1);
        List<Target> drawn = new ArrayList<>();
        for (int i = 0; i < objects; i++) {
            CatalogueStar place = CatalogueStar.fixed(
                    Angle.ofDegrees(random.nextDouble(360)), new Angle(Math.asin(random.nextDouble(-1, 1))));
            Angle size = Angle.ofArcminutes(random.nextDouble(1, 60));
            drawn.add(new Target(
                    new FixedStar("object " + i, place),
                    "galaxy",
                    OptionalDouble.of(random.nextDouble(5, 14)),
                    size,
                    size,
                    Target.Renown.LISTED,
                    false));
        }
        targets = drawn;
    }

    /** From the Sun's path to the order of the night. */
    @Benchmark
    public TonightsPlan plan() {
        Horizon hills = new Horizon(List.of(
                new Horizon.Point(Angle.ofDegrees(60), Angle.ofDegrees(8)),
                new Horizon.Point(Angle.ofDegrees(120), Angle.ofDegrees(35)),
                new Horizon.Point(Angle.ofDegrees(240), Angle.ofDegrees(12))));
        Evening evening = Evening.at(
                LARKFELL,
                Weather.standardAt(LARKFELL.heightMetres()),
                Rig.typicalForkOnWedge(),
                hills,
                Instant.parse("2026-12-10T14:00:00Z"),
                Optional.empty());
        return TonightsPlan.usual(
                evening, Observing.of(evening.rig(), Optional.empty(), Optional.of(Purpose.EYES)), targets);
    }
}
