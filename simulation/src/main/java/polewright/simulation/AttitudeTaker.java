package polewright.simulation;

import java.time.Instant;
import polewright.sky.attitude.CameraAttitude;

/** Measures the attitude of a camera on a fork from a frame. */
@FunctionalInterface
public interface AttitudeTaker {
    /**
     * Takes a frame and gives the camera's attitude.
     *
     * @param fork in its pointing at the time
     * @param middle of the exposure
     */
    CameraAttitude take(SimulatedFork fork, Instant middle);
}
