package polewright.simulation;

import polewright.image.match.MatchedFrame;
import polewright.simulation.camera.RenderedFrame;
import polewright.sky.attitude.CameraAttitude;

/**
 * A rendered frame and the results from it.
 *
 * @param rendered the frame, with its true values
 * @param match which stars are on it
 * @param attitude the camera's attitude according to the stars
 */
public record Photograph(RenderedFrame rendered, MatchedFrame match, CameraAttitude attitude) {}
