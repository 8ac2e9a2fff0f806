package polewright.simulation;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;
import polewright.simulation.camera.Exposure;
import polewright.simulation.camera.FrameRenderer;
import polewright.simulation.camera.RenderedFrame;
import polewright.simulation.camera.SimulatedCamera;
import polewright.simulation.camera.SkyConditions;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * Takes frames with a camera on the tube of a {@link SimulatedFork}.
 *
 * @param renderer renders the frames
 * @param weather the air that refracts the light
 * @param sky seeing, background and transparency
 */
public record SimulatedPhotographer(
        FrameRenderer renderer, SimulatedCamera camera, Site site, Weather weather, SkyConditions sky) {
    /** One frame in the fork's pointing at that time. */
    public RenderedFrame take(SimulatedFork fork, Instant middle, Duration exposure, RandomGenerator random) {
        return renderer.render(new Exposure(camera, fork.during(middle), site, weather, sky, middle, exposure), random);
    }

    /**
     * Frames for finding the axis: only the right-ascension axis is turned between them.
     *
     * @param fork in its pointing for the first frame
     * @param first middle of the first exposure
     * @param step turned westward between frames
     * @param count of frames
     * @param between from the middle of one to the middle of the next
     * @return the frames in order
     */
    public List<RenderedFrame> takeTurning(
            SimulatedFork fork,
            Instant first,
            Angle step,
            int count,
            Duration between,
            Duration exposure,
            RandomGenerator random) {
        return IntStream.range(0, count)
                .mapToObj(i -> take(fork.turned(step.times(i)), first.plus(between.multipliedBy(i)), exposure, random))
                .toList();
    }

    /** Frames of one field, for its drift: nothing is touched and the drive keeps running. */
    public List<RenderedFrame> takeWatching(
            SimulatedFork fork, Instant first, int count, Duration between, Duration exposure, RandomGenerator random) {
        return takeTurning(fork, first, Angle.ZERO, count, between, exposure, random);
    }
}
