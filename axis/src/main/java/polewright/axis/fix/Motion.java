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
        return of(
                rig,
                new Made(azimuth, rig.azimuthScrew().effect(azimuth, senses.azimuth()), 1),
                new Made(altitude, rig.altitudeScrew().effect(altitude, senses.altitude()), 1),
                senses,
                presentAltitude);
    }

    /** The same with one screw slipping: anything from none to all of its turns takes effect, and nothing is learned of it. */
    static Motion slipping(Rig rig, Step.Slipped slipped, TurnSenses senses, Angle presentAltitude) {
        HandTurns azimuth = slipped.told().azimuth();
        HandTurns altitude = slipped.told().altitude();
        boolean isAzimuth = slipped.screw() == Step.Slipped.Which.AZIMUTH;
        return of(
                rig,
                isAzimuth
                        ? Made.slipping(azimuth)
                        : new Made(azimuth, rig.azimuthScrew().effect(azimuth, senses.azimuth()), 1),
                isAzimuth
                        ? new Made(altitude, rig.altitudeScrew().effect(altitude, senses.altitude()), 1)
                        : Made.slipping(altitude),
                senses,
                presentAltitude);
    }

    /**
     * What was made of one screw.
     *
     * @param teaches 1 when the move tells of the screw's effect, else 0
     */
    private record Made(HandTurns turns, Screw.Effect effect, double teaches) {
        static Made slipping(HandTurns turns) {
            return new Made(turns, new Screw.Effect(turns.net() / 2, Math.abs(turns.net()) / Math.sqrt(12)), 0);
        }

        double sigmaRad(Screw screw, Angle presentAltitude) {
            double one = turns.net() == 0 ? 1 : turns.net();
            return effect.sigmaTurns()
                    * Math.abs(screw.move(one, presentAltitude).radians() / one);
        }
    }

    private static Motion of(Rig rig, Made azimuth, Made altitude, TurnSenses senses, Angle presentAltitude) {
        double azimuthMove = rig.azimuthScrew()
                .move(azimuth.effect().turns(), presentAltitude)
                .radians();
        double altitudeMove = rig.altitudeScrew()
                .move(altitude.effect().turns(), presentAltitude)
                .radians();
        RealMatrix transition = MatrixUtils.createRealIdentityMatrix(AxisState.SIZE);
        transition.setEntry(AxisState.AZIMUTH, AxisState.AZIMUTH_GAIN, azimuth.teaches() * azimuthMove);
        transition.setEntry(AxisState.AZIMUTH, AxisState.ALTITUDE_INTO_AZIMUTH, altitudeMove);
        transition.setEntry(AxisState.ALTITUDE, AxisState.ALTITUDE_GAIN, altitude.teaches() * altitudeMove);
        transition.setEntry(AxisState.ALTITUDE, AxisState.AZIMUTH_INTO_ALTITUDE, azimuthMove);
        Bend bend = Bend.of(rig, azimuthMove, altitudeMove, presentAltitude);
        return new Motion(
                transition,
                shiftOf(azimuthMove, altitudeMove),
                noiseOf(
                        Math.hypot(azimuth.sigmaRad(rig.azimuthScrew(), presentAltitude), bend.azimuthSigmaRad()),
                        Math.hypot(altitude.sigmaRad(rig.altitudeScrew(), presentAltitude), bend.altitudeSigmaRad())),
                senses.after(azimuth.turns(), altitude.turns()));
    }

    /**
     * What constant figures of the screws leave out of a long way on a leaning base, 1 sigma: as the axis rises, a lean β
     * takes it aside by β / cos² of the altitude and scales its azimuth by β tan of it; as it swings, the lean comes to lie
     * otherwise. Second order in the moves: nothing to speak of within half a degree, minutes of arc over five.
     */
    private record Bend(double azimuthSigmaRad, double altitudeSigmaRad) {
        static Bend of(Rig rig, double azimuthMove, double altitudeMove, Angle presentAltitude) {
            double lean = rig.levelSigma().radians();
            double cos = Math.max(LEAST_COS_LATITUDE, presentAltitude.cos());
            double rising = Math.abs(presentAltitude.sin()) / (cos * cos * cos) * altitudeMove * altitudeMove;
            // By the tangent of the altitude that has changed, and by the lean that lies otherwise.
            double both = Math.sqrt(2) / (cos * cos) * azimuthMove * altitudeMove;
            return new Bend(lean * Math.hypot(rising, both), lean * azimuthMove * azimuthMove / 2);
        }
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
