package polewright.simulation.camera;

import polewright.image.Frame;

/**
 * A picture of the simulated sky.
 *
 * @param frame as a decoder would give it
 * @param truth what is true of it
 */
public record RenderedFrame(Frame frame, SkyTruth truth) {}
