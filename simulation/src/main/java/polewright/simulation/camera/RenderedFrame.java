package polewright.simulation.camera;

import polewright.image.Frame;

/**
 * A frame of the simulated sky.
 *
 * @param frame as a decoder would give it
 * @param truth its true values
 */
public record RenderedFrame(Frame frame, SkyTruth truth) {}
