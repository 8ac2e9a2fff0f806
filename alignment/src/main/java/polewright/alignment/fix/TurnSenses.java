package polewright.alignment.fix;

import polewright.mount.rig.HandTurns;

/**
 * Which way each screw was left, by the last leg of its last turn: what ends the other way first takes up its play.
 *
 * @param azimuth +1 clockwise, −1 counter-clockwise, 0 not turned yet
 * @param altitude the same of the altitude screw
 */
record TurnSenses(double azimuth, double altitude) {
    static final TurnSenses NOT_TURNED = new TurnSenses(0, 0);

    TurnSenses after(HandTurns azimuthTurns, HandTurns altitudeTurns) {
        return new TurnSenses(
                azimuthTurns.isNone() ? azimuth : azimuthTurns.lastSense(),
                altitudeTurns.isNone() ? altitude : altitudeTurns.lastSense());
    }
}
