package polewright.bench;

import java.time.Duration;
import java.time.Instant;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import polewright.simulation.camera.CameraAim;
import polewright.simulation.camera.CameraPath;
import polewright.simulation.camera.Exposure;
import polewright.simulation.camera.FrameRenderer;
import polewright.simulation.camera.RenderedFrame;
import polewright.simulation.camera.SimulatedCamera;
import polewright.simulation.camera.SkyConditions;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.place.RefractedDirection;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** Rendering one frame: the frame benches render thousands. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class FrameRenderingBenchmark {
    /** The simulated cameras. */
    public enum Camera {
        GUIDE_2_MEGAPIXELS,
        MAIN_TUBE_24_MEGAPIXELS,
        WIDE_LENS_24_MEGAPIXELS;

        SimulatedCamera simulated() {
            return switch (this) {
                case GUIDE_2_MEGAPIXELS -> SimulatedCamera.guideCamera();
                case MAIN_TUBE_24_MEGAPIXELS -> SimulatedCamera.mainTubeCamera();
                case WIDE_LENS_24_MEGAPIXELS -> SimulatedCamera.wideLens();
            };
        }
    }

    @Param
    private Camera camera = Camera.GUIDE_2_MEGAPIXELS;

    private final FrameRenderer renderer = new FrameRenderer(StarAtlas.bundled());
    private final SplittableRandom random = new SplittableRandom(1);

    /** Half-way up in the west, on a mount with its drive off, so that stars trail. */
    @Benchmark
    public RenderedFrame fiveSeconds() {
        Exposure exposure = new Exposure(
                camera.simulated(),
                CameraPath.standing(CameraAim.at(
                        RefractedDirection.of(Angle.ofDegrees(280), Angle.ofDegrees(50)), Angle.ofDegrees(20))),
                Site.ofDegrees(54.60, -2.90, 240),
                Weather.standardAt(240),
                SkyConditions.COUNTRY,
                Instant.parse("2026-10-14T21:00:00Z"),
                Duration.ofSeconds(5));
        return renderer.render(exposure, random);
    }
}
