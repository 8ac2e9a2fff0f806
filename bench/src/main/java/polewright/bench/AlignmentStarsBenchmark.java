package polewright.bench;

import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
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
import polewright.mount.rig.Rig;
import polewright.planning.tonight.AlignmentOutcome;
import polewright.planning.tonight.AlignmentStars;
import polewright.planning.tonight.Evening;
import polewright.sky.daylight.Instrument;
import polewright.sky.place.Horizon;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** Choosing alignment stars and their order, by night and by day; the evening itself is computed beforehand. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class AlignmentStarsBenchmark {
    private static final Site SITE = Site.ofDegrees(54.60, -2.90, 240);

    @Param({"2026-11-25T18:30:00Z", "2026-11-25T13:00:00Z"})
    private String at = "";

    @Param({"3", "8"})
    private int count;

    private Optional<Evening> evening = Optional.empty();

    @Setup
    public void computeEvening() {
        evening = Optional.of(Evening.at(
                SITE,
                Weather.standardAt(SITE.heightMetres()),
                Rig.typicalForkOnWedge(),
                Horizon.OPEN,
                Instant.parse(at),
                Optional.empty()));
    }

    @Benchmark
    public AlignmentOutcome stars() {
        return AlignmentStars.of(evening.orElseThrow(), count, Instrument.forFinding(200), Optional.empty());
    }
}
