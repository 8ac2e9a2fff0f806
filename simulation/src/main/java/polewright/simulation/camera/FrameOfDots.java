package polewright.simulation.camera;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.stream.Stream;
import polewright.image.Frame;

/**
 * Frames that nothing should match: dots as sharp, as many and as bright as stars, in random places. For testing
 * whether a matcher finds false matches in them.
 */
public final class FrameOfDots {
    private static final double FAINTEST_SIGNAL_TO_NOISE = 15;
    private static final double BRIGHTEST_ELECTRONS = 1e7;

    private FrameOfDots() {}

    /**
     * Dots all over the picture, twice as many for each halving of their light, the faintest still clear.
     *
     * @param middle the time recorded in the frame
     * @param dots how many
     */
    public static Frame scattered(
            SimulatedCamera camera,
            SkyConditions sky,
            Instant middle,
            Duration length,
            int dots,
            RandomGenerator random) {
        CameraWork work = new CameraWork(camera, sky, length);
        double faintest = work.electronsFor(FAINTEST_SIGNAL_TO_NOISE);
        List<StarImage> images = Stream.generate(() ->
                        dot(camera, Math.min(BRIGHTEST_ELECTRONS, faintest / (1 - random.nextDouble())), random))
                .limit(dots)
                .toList();
        return work.frame(work.charge(images), middle, random);
    }

    /** A false sky: every star of a real frame with its own brightness, at a random place in the picture. */
    public static Frame shuffled(Exposure exposure, SkyTruth truth, RandomGenerator random) {
        SimulatedCamera camera = exposure.camera();
        CameraWork work = new CameraWork(camera, exposure.sky(), exposure.length());
        List<StarImage> images = truth.stars().stream()
                .map(star -> dot(camera, star.electrons(), random))
                .toList();
        return work.frame(work.charge(images), exposure.middle(), random);
    }

    private static StarImage dot(SimulatedCamera camera, double electrons, RandomGenerator random) {
        return StarImage.still(
                TrueStar.OF_NO_ATLAS,
                Double.NaN,
                electrons,
                random.nextDouble() * camera.detector().width() - 0.5,
                random.nextDouble() * camera.detector().height() - 0.5);
    }
}
