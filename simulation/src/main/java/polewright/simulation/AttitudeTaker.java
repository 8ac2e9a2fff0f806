package polewright.simulation;

import java.time.Instant;
import polewright.sky.attitude.CameraAttitude;

/** How a frame taken with a camera on a fork becomes an attitude. */
@FunctionalInterface
public interface AttitudeTaker {
    /**
     * Takes a frame and says how the camera stood.
     *
     * @param fork as it points then
     * @param middle of the exposure
     */
    CameraAttitude take(SimulatedFork fork, Instant middle);
}
