package polewright.rehearsal;

import java.time.Instant;
import polewright.axis.advice.ScrewTurn;
import polewright.axis.camera.ScrewsSoFar;
import polewright.axis.fix.AxisState;

/**
 * One frame taken while screws were being turned, and what it told.
 *
 * @param at middle of the exposure
 * @param made the turn made since the look before
 * @param soFar where the axis had got to
 * @param left what was left to turn then
 */
public record LookWhileTurning(Instant at, ScrewTurn made, ScrewsSoFar soFar, AxisState.Turns left) {}
