package polewright.rehearsal;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;

/**
 * A camera fixed to the tube of a fork, and where the tube is pointed to find the axis.
 *
 * @param taker what makes attitudes of its frames
 * @param tube how the camera sits
 * @param polarDistance of the tube by the mount's own circle: zero in the home position
 */
public record CameraOnTube(AttitudeTaker taker, TubeOnFork tube, Angle polarDistance) {
    private static final int FRAMES = 3;
    private static final Angle STEP = Angle.ofDegrees(30);
    private static final Duration BETWEEN_FRAMES = Duration.ofSeconds(40);

    /** The first frame until after the last. */
    public static final Duration TAKES = BETWEEN_FRAMES.multipliedBy(FRAMES);

    /**
     * Frames between which right ascension was turned and nothing else, and how the fork was left.
     *
     * @param attitudes in order
     * @param fork as it pointed in the last
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

    /** One more frame, screws having been turned and nothing else. */
    CameraAttitude again(SimulatedFork left, HiddenWedge wedge, Instant at) {
        return taker.take(left.carriedBy(wedge), at);
    }
}
