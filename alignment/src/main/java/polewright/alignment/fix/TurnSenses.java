package polewright.alignment.fix;

import polewright.mount.rig.HandTurns;

/**
 * The direction of each screw's last leg. A turn that ends in the other direction takes up the backlash first.
 *
 * @param azimuth +1 clockwise, −1 counter-clockwise, 0 not turned yet
 * @param altitude the same for the altitude screw
 */
record TurnSenses(double azimuth, double altitude) {
    static final TurnSenses NOT_TURNED = new TurnSenses(0, 0);

    TurnSenses after(HandTurns azimuthTurns, HandTurns altitudeTurns) {
        return new TurnSenses(
                azimuthTurns.isNone() ? azimuth : azimuthTurns.lastSense(),
                altitudeTurns.isNone() ? altitude : altitudeTurns.lastSense());
    }
}
