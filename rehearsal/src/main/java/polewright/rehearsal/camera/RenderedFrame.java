package polewright.rehearsal.camera;

import polewright.frames.Frame;

/**
 * A picture of the simulated sky.
 *
 * @param frame as a decoder would give it
 * @param truth what is true of it
 */
public record RenderedFrame(Frame frame, SkyTruth truth) {}
