package polewright.alignment.advice;

import polewright.mount.rig.ClockDirection;

/**
 * What a turn of a screw looks like in the finder or the eyepiece: the tube is rigid with the axis, so that everything in
 * its view moves as the axis does, the other way.
 *
 * @param screw which one is being turned
 * @param optic the name of what to look through
 * @param isPoleStar whether the pole star stands in that view; otherwise any star near where the axis points is watched
 * @param fields how far it moves, in field widths
 * @param toward which way, in the view
 */
public record SkyMeanwhile(
        ScrewTurn.Which screw, String optic, boolean isPoleStar, double fields, ClockDirection toward) {}
