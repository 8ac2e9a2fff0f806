package polewright.axis.fix;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import polewright.axis.rig.Rig;
import polewright.axis.rig.Screw;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** A move of the axis as a linear step of {@link AxisState}: x → F x + f, with noise Q. */
record Motion(RealMatrix transition, RealVector shift, RealMatrix noise) {
    private static final double LEAST_COS_LATITUDE = 0.1;

    /**
     * Turns of the screws. The unknown gains enter the transition, so that a later fix tells of them.
     *
     * @param azimuthReversed whether the azimuth screw turns against its last sense, and may lose its backlash
     * @param presentAltitude altitude of the axis before the turn
     */
    static Motion turns(
            Rig rig,
            double azimuthTurns,
            double altitudeTurns,
            boolean azimuthReversed,
            boolean altitudeReversed,
            Angle presentAltitude) {
        double azimuthMove =
                rig.azimuthScrew().move(azimuthTurns, presentAltitude).radians();
        double altitudeMove =
                rig.altitudeScrew().move(altitudeTurns, presentAltitude).radians();
        RealMatrix transition = MatrixUtils.createRealIdentityMatrix(AxisState.SIZE);
        transition.setEntry(AxisState.AZIMUTH, AxisState.AZIMUTH_GAIN, azimuthMove);
        transition.setEntry(AxisState.AZIMUTH, AxisState.ALTITUDE_INTO_AZIMUTH, altitudeMove);
        transition.setEntry(AxisState.ALTITUDE, AxisState.ALTITUDE_GAIN, altitudeMove);
        transition.setEntry(AxisState.ALTITUDE, AxisState.AZIMUTH_INTO_ALTITUDE, azimuthMove);
        return new Motion(
                transition,
                shiftOf(azimuthMove, altitudeMove),
                noiseOf(
                        handSigmaRad(rig.azimuthScrew(), azimuthTurns, azimuthReversed, presentAltitude),
                        handSigmaRad(rig.altitudeScrew(), altitudeTurns, altitudeReversed, presentAltitude)));
    }

    /** A shift of unknown direction, {@code sigma} on the sky each way. */
    static Motion shift(Site site, Angle sigma) {
        double cosLat = Math.max(LEAST_COS_LATITUDE, site.latitude().cos());
        return new Motion(
                MatrixUtils.createRealIdentityMatrix(AxisState.SIZE),
                shiftOf(0, 0),
                noiseOf(sigma.radians() / cosLat, sigma.radians()));
    }

    AxisState applyTo(AxisState state) {
        RealVector mean = transition.operate(state.mean()).add(shift);
        RealMatrix covariance = transition
                .multiply(state.covariance())
                .multiplyTransposed(transition)
                .add(noise);
        return new AxisState(state.site(), mean, covariance);
    }

    private static double handSigmaRad(Screw screw, double turns, boolean reversed, Angle presentAltitude) {
        if (turns == 0) {
            return 0;
        }
        double perTurn = Math.abs(screw.move(turns, presentAltitude).radians() / turns);
        // Half the play either way: whether it was taken up before the count began is not known.
        double play = reversed ? screw.backlashTurns() / 2 : 0;
        return perTurn * Math.hypot(screw.handSigmaTurns(), play);
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
