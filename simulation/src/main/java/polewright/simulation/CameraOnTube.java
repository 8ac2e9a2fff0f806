package polewright.simulation;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.random.RandomGenerator;
import polewright.alignment.sighting.TurnedFrames;
import polewright.simulation.camera.SimulatedCamera;
import polewright.simulation.camera.SkyConditions;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;

/**
 * A camera fixed to the tube of a fork, and the pointing of the tube for finding the axis.
 *
 * @param taker measures attitudes from its frames
 * @param tube how the camera is mounted
 * @param polarDistance of the tube by the mount's own circle: zero in the home position
 */
public record CameraOnTube(AttitudeTaker taker, TubeOnFork tube, Angle polarDistance) {
    private static final int FRAMES = 3;
    private static final Duration EXPOSURE = Duration.ofSeconds(2);
    // An axis set up by compass and scale is off by some degrees; this is a lot (common practice).
    private static final Angle NEAR_THE_POLE = Angle.ofDegrees(15);
    // Cone error and tilt of the declination axis (common practice: a fraction of a degree).
    private static final Angle MISALIGNMENT = Angle.ofArcminutes(12);
    private static final Angle STEP = Angle.ofDegrees(30);
    private static final Duration BETWEEN_FRAMES = Duration.ofSeconds(40);

    /** From the first frame until after the last. */
    public static final Duration TAKES = BETWEEN_FRAMES.multipliedBy(FRAMES);

    /**
     * A camera in the home position, on a tube with typical cone error, whose frames are rendered and matched.
     *
     * @param setting of the night
     * @param random source of the tube's misalignments and the frames' noise
     * @param album receives each frame once it has been matched
     */
    public static CameraOnTube ofDrawnFrames(
            SimulatedCamera camera,
            DrawnSky sky,
            RehearsedNight.Setting setting,
            RandomGenerator random,
            Consumer<Photograph> album) {
        TubeOnFork tube = new TubeOnFork(
                MISALIGNMENT.times(random.nextGaussian()),
                MISALIGNMENT.times(random.nextGaussian()),
                Angle.ofDegrees(360 * random.nextDouble()),
                TurnedFrames.MOUNT_FLEXURE.times(Math.abs(random.nextGaussian())));
        SimulatedPhotographer photographer = new SimulatedPhotographer(
                sky.renderer(), camera, setting.wedge().site(), setting.weather(), SkyConditions.COUNTRY);
        return new CameraOnTube(
                new MatchedPhotographs(photographer, sky, NEAR_THE_POLE, EXPOSURE, random, album), tube, Angle.ZERO);
    }

    /**
     * Frames between which only right ascension was turned, and the fork after them.
     *
     * @param attitudes in order
     * @param fork in its pointing for the last frame
     */
    public record Turned(List<CameraAttitude> attitudes, SimulatedFork fork) {}

    /** Three frames, right ascension turned by 30 degrees between them, the drive off; the second on the meridian. */
    public Turned turned(HiddenWedge wedge, Instant first) {
        Angle declination =
                Angle.QUARTER_TURN.minus(polarDistance).times(wedge.site().hemisphereSign());
        SimulatedFork fork = SimulatedFork.on(wedge, tube, first).pointed(STEP.negated(), declination, first);
        List<CameraAttitude> attitudes = new ArrayList<>();
        for (int i = 0; i < FRAMES; i++) {
            fork = i == 0 ? fork : fork.turned(STEP);
            attitudes.add(taker.take(fork, first.plus(BETWEEN_FRAMES.multipliedBy(i))));
        }
        return new Turned(List.copyOf(attitudes), fork);
    }

    /** One more frame after only screws have been turned. */
    CameraAttitude anotherFrame(SimulatedFork left, HiddenWedge wedge, Instant at) {
        return taker.take(left.onWedge(wedge), at);
    }
}
