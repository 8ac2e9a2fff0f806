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
record Motion(RealMatrix transition, RealVector shift, RealMatrix noise, TurnSenses sensesAfter) {
    private static final double LEAST_COS_LATITUDE = 0.1;

    /**
     * Turns of the screws, made by hand from {@code before}. The unknown gains enter the transition, so that a later fix
     * tells of them. A screw turned against its last sense loses some of its play, anything from none to all.
     */
    static Motion turns(Rig rig, double azimuthTurns, double altitudeTurns, TurnSenses senses, Angle presentAltitude) {
        Screw azimuth = rig.azimuthScrew();
        Screw altitude = rig.altitudeScrew();
        boolean azimuthReversed = senses.azimuthReversedBy(azimuthTurns);
        boolean altitudeReversed = senses.altitudeReversedBy(altitudeTurns);
        double azimuthMove = azimuth.move(azimuth.expected(azimuthTurns, azimuthReversed), presentAltitude)
                .radians();
        double altitudeMove = altitude.move(altitude.expected(altitudeTurns, altitudeReversed), presentAltitude)
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
                        handSigmaRad(azimuth, azimuthTurns, azimuthReversed, presentAltitude),
                        handSigmaRad(altitude, altitudeTurns, altitudeReversed, presentAltitude)),
                senses.after(azimuthTurns, altitudeTurns));
    }

    /** A shift of unknown direction, {@code sigma} on the sky each way. */
    static Motion shift(Site site, Angle sigma, TurnSenses senses) {
        double cosLat = Math.max(LEAST_COS_LATITUDE, site.latitude().cos());
        return new Motion(
                MatrixUtils.createRealIdentityMatrix(AxisState.SIZE),
                shiftOf(0, 0),
                noiseOf(sigma.radians() / cosLat, sigma.radians()),
                senses);
    }

    AxisState applyTo(AxisState state) {
        RealVector mean = transition.operate(state.mean()).add(shift);
        RealMatrix covariance = transition
                .multiply(state.covariance())
                .multiplyTransposed(transition)
                .add(noise);
        return new AxisState(state.site(), mean, covariance, sensesAfter);
    }

    private static double handSigmaRad(Screw screw, double turns, boolean reversed, Angle presentAltitude) {
        if (turns == 0) {
            return 0;
        }
        double perTurn = Math.abs(screw.move(turns, presentAltitude).radians() / turns);
        return perTurn * Math.hypot(screw.handSigmaTurns(), reversed ? screw.playSigmaTurns() : 0);
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
