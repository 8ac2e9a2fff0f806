package polewright.simulation;

import java.time.Instant;
import polewright.alignment.advice.FollowedScrews;
import polewright.alignment.advice.ScrewTurn;
import polewright.alignment.camera.ScrewProgress;

/**
 * One frame taken while screws were being turned, and its result.
 *
 * @param at middle of the exposure
 * @param made the turn made since the previous frame
 * @param soFar where the axis was by then
 * @param screws what the frame showed of the screws, before the night learned from it
 */
public record FrameWhileTurning(Instant at, ScrewTurn made, ScrewProgress soFar, FollowedScrews screws) {}
