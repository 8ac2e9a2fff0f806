package polewright.axis.fix;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import polewright.axis.AxisOffset;
import polewright.axis.rig.HandTurns;
import polewright.axis.rig.Rig;
import polewright.axis.rig.Screw;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** A move of the axis as a linear step of {@link AxisState}: x → F x + f, with noise Q. */
record Motion(RealMatrix transition, RealVector shift, RealMatrix noise, TurnSenses sensesAfter) {
    private static final double LEAST_COS_LATITUDE = 0.1;

    /**
     * Turns of the screws, made by hand with the axis at {@code presentAltitude}. The unknown gains enter the transition, so
     * that a later fix tells of them. A screw left against its last sense loses some of its play, anything from none to all.
     */
    static Motion turns(Rig rig, HandTurns azimuth, HandTurns altitude, TurnSenses senses, Angle presentAltitude) {
        Screw.Effect azimuthEffect = rig.azimuthScrew().effect(azimuth, senses.azimuth());
        Screw.Effect altitudeEffect = rig.altitudeScrew().effect(altitude, senses.altitude());
        double azimuthMove =
                rig.azimuthScrew().move(azimuthEffect.turns(), presentAltitude).radians();
        double altitudeMove = rig.altitudeScrew()
                .move(altitudeEffect.turns(), presentAltitude)
                .radians();
        RealMatrix transition = MatrixUtils.createRealIdentityMatrix(AxisState.SIZE);
        transition.setEntry(AxisState.AZIMUTH, AxisState.AZIMUTH_GAIN, azimuthMove);
        transition.setEntry(AxisState.AZIMUTH, AxisState.ALTITUDE_INTO_AZIMUTH, altitudeMove);
        transition.setEntry(AxisState.ALTITUDE, AxisState.ALTITUDE_GAIN, altitudeMove);
        transition.setEntry(AxisState.ALTITUDE, AxisState.AZIMUTH_INTO_ALTITUDE, azimuthMove);
        return new Motion(
                transition,
                shiftOf(azimuthMove, altitudeMove),
                noiseOf(
                        azimuthEffect.sigmaTurns() * perTurnRad(rig.azimuthScrew(), azimuth, presentAltitude),
                        altitudeEffect.sigmaTurns() * perTurnRad(rig.altitudeScrew(), altitude, presentAltitude)),
                senses.after(azimuth, altitude));
    }

    /** A shift that is not of the screws' making: {@code usual} on the sky, {@code sigma} about it each way. */
    static Motion shift(Site site, AxisOffset usual, Angle sigma, TurnSenses senses) {
        double eastPerAzimuth = eastPerAzimuth(site);
        return new Motion(
                MatrixUtils.createRealIdentityMatrix(AxisState.SIZE),
                shiftOf(usual.east().radians() / eastPerAzimuth, usual.up().radians()),
                noiseOf(sigma.radians() / Math.abs(eastPerAzimuth), sigma.radians()),
                senses);
    }

    /** How far on the sky an axis near the pole goes east for a growth of azimuth: in the south, where east is left, negative. */
    static double eastPerAzimuth(Site site) {
        return site.hemisphereSign()
                * Math.max(LEAST_COS_LATITUDE, site.latitude().cos());
    }

    AxisState applyTo(AxisState state) {
        RealVector mean = transition.operate(state.mean()).add(shift);
        RealMatrix covariance = transition
                .multiply(state.covariance())
                .multiplyTransposed(transition)
                .add(noise);
        return new AxisState(state.site(), mean, covariance, sensesAfter);
    }

    private static double perTurnRad(Screw screw, HandTurns made, Angle presentAltitude) {
        double turns = made.net() == 0 ? 1 : made.net();
        return Math.abs(screw.move(turns, presentAltitude).radians() / turns);
    }

    private static RealVector shiftOf(double azimuthRad, double altitudeRad) {
        RealVector shift = MatrixUtils.createRealVector(AxisState.SIZE);
        shift.setEntry(AxisState.AZIMUTH, azimuthRad);
        shift.setEntry(AxisState.ALTITUDE, altitudeRad);
        return shift;
    }

    private static RealMatrix noiseOf(double azimuthSigmaRad, double altitudeSigmaRad) {
        RealMatrix noise = new Array2DRowRealMatrix(AxisState.SIZE, AxisState.SIZE);
        noise.setEntry(AxisState.AZIMUTH, AxisState.AZIMUTH, azimuthSigmaRad * azimuthSigmaRad);
        noise.setEntry(AxisState.ALTITUDE, AxisState.ALTITUDE, altitudeSigmaRad * altitudeSigmaRad);
        return noise;
    }
}
