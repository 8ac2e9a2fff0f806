package polewright.rehearsal;

import java.time.Instant;
import polewright.axis.advice.FollowedScrews;
import polewright.axis.advice.ScrewTurn;
import polewright.axis.camera.ScrewsSoFar;

/**
 * One frame taken while screws were being turned, and what it told.
 *
 * @param at middle of the exposure
 * @param made the turn made since the look before
 * @param soFar where the axis had got to
 * @param screws what the frame showed of the screws, before the night learned from it
 */
public record LookWhileTurning(Instant at, ScrewTurn made, ScrewsSoFar soFar, FollowedScrews screws) {}
