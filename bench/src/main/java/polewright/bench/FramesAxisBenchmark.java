package polewright.bench;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import polewright.alignment.camera.AxisFromFrames;
import polewright.alignment.camera.Drive;
import polewright.alignment.camera.ScrewProgress;
import polewright.alignment.fix.AxisState;
import polewright.alignment.fix.ScrewGains;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Rig;
import polewright.simulation.CameraOnTube;
import polewright.simulation.HiddenWedge;
import polewright.simulation.SimulatedObserver;
import polewright.simulation.TubeOnFork;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** From matched frames to the axis, and from one more frame to the remaining turns. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class FramesAxisBenchmark {
    private final Site site = Site.ofDegrees(54.60, -2.90, 240);
    private final Rig rig =
            Rig.typicalForkOnWedge().withCameras(List.of(new Camera("guide camera", 240, 3.75, 1280, 960)));
    private final RandomGenerator random =
            RandomGeneratorFactory.of("L64X128MixRandom").create(1);
    private final SimulatedObserver observer = new SimulatedObserver(Weather.standardAt(240), random);
    private final List<CameraAttitude> frames = new CameraOnTube(
                    (fork, at) -> observer.attitude(fork, at, rig.bestCamera().orElseThrow()),
                    TubeOnFork.SQUARE,
                    Angle.ofDegrees(45))
            .turned(
                    HiddenWedge.of(site, rig, AxisOffset.ofArcminutes(90, -60), random),
                    Instant.parse("2026-11-25T20:00:00Z"))
            .attitudes();
    private final AxisFromFrames found = AxisFromFrames.of(site, frames);
    private final CameraAttitude now = turned();

    private CameraAttitude turned() {
        CameraAttitude last = frames.get(frames.size() - 1);
        Rotation swung = new Rotation(Vector3D.PLUS_K, 0.01, RotationConvention.VECTOR_OPERATOR);
        return CameraAttitude.of(
                last.at().plus(Duration.ofSeconds(30)), swung.applyTo(last.cameraToEnu()), last.covariance());
    }

    @Benchmark
    public AxisFromFrames axisFromThreeFrames() {
        return AxisFromFrames.of(site, frames);
    }

    @Benchmark
    public AxisState.Turns turnsLeftFromOneFrame() {
        ScrewProgress soFar = ScrewProgress.of(found, now, Drive.STANDING, rig.levelSigma());
        return ScrewGains.ofRig(rig).turnsBetween(soFar.now().axis(), AxisPointing.atPole(site), rig);
    }
}
