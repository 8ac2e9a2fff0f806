package polewright.alignment.advice;

import polewright.mount.rig.ClockDirection;

/**
 * What a turn of a screw looks like in the finder or the eyepiece. The tube is fixed to the axis, so everything in its
 * view moves opposite to the axis.
 *
 * @param screw the screw being turned
 * @param optic the name of the optic to look through
 * @param isPoleStar whether the pole star is in that view; otherwise watch any star near where the axis points
 * @param fields how far the star moves, in field widths
 * @param toward the direction in which it moves in the view
 */
public record SkyMeanwhile(
        ScrewTurn.Which screw, String optic, boolean isPoleStar, double fields, ClockDirection toward) {}
