package polewright.simulation;

import polewright.image.match.MatchedFrame;
import polewright.simulation.camera.RenderedFrame;
import polewright.sky.attitude.CameraAttitude;

/**
 * A rendered frame and what was made of it.
 *
 * @param rendered the frame, with what is true of it
 * @param match which stars are on it
 * @param attitude how the camera stood, as the stars tell
 */
public record Photograph(RenderedFrame rendered, MatchedFrame match, CameraAttitude attitude) {}
