package polewright.bench;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;
import polewright.simulation.RehearsedNight;
import polewright.sky.angle.Angle;

/** Fix and advice for a night of ordinary length, with sightings already computed and not. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class FixBenchmark {
    private List<LoggedEvent> events = List.of();
    private final NightState.ModelCache models = new NightState.ModelCache();

    @Setup
    public void playNight() {
        events = RandomNight.offsetOf(Angle.ofDegrees(5), 1).stream()
                .map(RehearsedNight.Moment::event)
                .toList();
        NightState.of(events, events.get(events.size() - 1).at(), models);
    }

    @Benchmark
    public NightState fixAndAdviceWithModels() {
        return NightState.of(events, events.get(events.size() - 1).at(), models);
    }

    @Benchmark
    public NightState fixAndAdviceFromScratch() {
        return NightState.of(events);
    }
}
