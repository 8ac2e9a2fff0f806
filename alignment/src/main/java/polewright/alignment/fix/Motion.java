package polewright.alignment.fix;

import polewright.mount.AxisOffset;
import polewright.mount.rig.HandTurns;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/**
 * A move of the axis as a linear transition of {@link AxisState}: x → F x + f, with process noise Q.
 *
 * @param gains the entries of F off its unit diagonal
 * @param azimuthRad f
 * @param altitudeRad f
 * @param azimuthVariance Q, rad²
 * @param altitudeVariance Q, rad²
 * @param sensesAfter direction of each screw's last turn after the move
 */
record Motion(
        Gains gains,
        double azimuthRad,
        double altitudeRad,
        double azimuthVariance,
        double altitudeVariance,
        TurnSenses sensesAfter) {
    private static final double LEAST_COS_LATITUDE = 0.1;

    /**
     * Turns of the screws by hand with the axis at {@code presentAltitude}. The unknown gains enter the transition, so
     * later sightings constrain them. A screw that ends against its last direction loses anything from none to all of
     * its backlash.
     */
    static Motion turns(Rig rig, HandTurns azimuth, HandTurns altitude, TurnSenses senses, Angle presentAltitude) {
        return of(
                rig,
                new Made(azimuth, rig.azimuthScrew().effect(azimuth, senses.azimuth()), 1),
                new Made(altitude, rig.altitudeScrew().effect(altitude, senses.altitude()), 1),
                senses,
                presentAltitude);
    }

    /**
     * The same with one screw slipping: none to all of its turns take effect, and its gain is not learned from them.
     */
    static Motion slipping(Rig rig, Step.Slipped slipped, TurnSenses senses, Angle presentAltitude) {
        HandTurns azimuth = slipped.entered().azimuth();
        HandTurns altitude = slipped.entered().altitude();
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
     * Turns of unknown size and direction. They say nothing about the gains, and the last direction of each screw is
     * unknown.
     */
    static Motion unlogged(Rig rig, Step.TurnedUnlogged step, TurnSenses senses, Angle presentAltitude) {
        double azimuth = step.azimuthSigma()
                * rig.azimuthScrew().move(1, presentAltitude).radians();
        double altitude = step.altitudeSigma()
                * rig.altitudeScrew().move(1, presentAltitude).radians();
        double lean = rig.levelSigma().radians();
        return new Motion(
                Gains.NONE,
                0,
                0,
                square(azimuth) + square(lean * altitude),
                square(altitude) + square(lean * azimuth),
                new TurnSenses(
                        step.azimuthSigma() > 0 ? 0 : senses.azimuth(),
                        step.altitudeSigma() > 0 ? 0 : senses.altitude()));
    }

    /**
     * The turns of one screw and their effect.
     *
     * @param teaches 1 if the move constrains the screw's gain, else 0
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
        Bend bend = Bend.of(rig, azimuthMove, altitudeMove, presentAltitude);
        return new Motion(
                new Gains(
                        azimuth.teaches() * azimuthMove, altitudeMove, altitude.teaches() * altitudeMove, azimuthMove),
                azimuthMove,
                altitudeMove,
                square(azimuth.sigmaRad(rig.azimuthScrew(), presentAltitude)) + square(bend.azimuthSigmaRad()),
                square(altitude.sigmaRad(rig.altitudeScrew(), presentAltitude)) + square(bend.altitudeSigmaRad()),
                senses.after(azimuth.turns(), altitude.turns()));
    }

    /**
     * The error of constant screw parameters over a long move on a leaning base, 1 sigma: as the axis rises, a lean β
     * moves it sideways by β / cos² of the altitude and scales its azimuth by β tan(altitude); as it swings, the
     * direction of the lean relative to it changes. Second order in the moves: negligible within half a degree,
     * arcminutes over five degrees.
     */
    private record Bend(double azimuthSigmaRad, double altitudeSigmaRad) {
        static Bend of(Rig rig, double azimuthMove, double altitudeMove, Angle presentAltitude) {
            double lean = rig.levelSigma().radians();
            double cos = Math.max(LEAST_COS_LATITUDE, presentAltitude.cos());
            double rising = Math.abs(presentAltitude.sin()) / (cos * cos * cos) * altitudeMove * altitudeMove;
            // From the change of tan(altitude), and from the change in the relative direction of the lean.
            double both = Math.sqrt(2) / (cos * cos) * azimuthMove * altitudeMove;
            return new Bend(lean * Math.hypot(rising, both), lean * azimuthMove * azimuthMove / 2);
        }
    }

    /** A shift not made by the screws: {@code usual} on the sky, with {@code sigma} about it in each direction. */
    static Motion shift(Site site, AxisOffset usual, Angle sigma, TurnSenses senses) {
        double eastPerAzimuth = eastPerAzimuth(site);
        return new Motion(
                Gains.NONE,
                usual.east().radians() / eastPerAzimuth,
                usual.up().radians(),
                square(sigma.radians() / eastPerAzimuth),
                square(sigma.radians()),
                senses);
    }

    /**
     * East offset on the sky per unit of azimuth for an axis near the pole; negative in the south, where east is left.
     */
    static double eastPerAzimuth(Site site) {
        return site.hemisphereSign()
                * Math.max(LEAST_COS_LATITUDE, site.latitude().cos());
    }

    AxisState applyTo(AxisState state) {
        double[] mean = state.copyOfMean();
        double[] covariance = state.copyOfCovariance();
        mean[AxisState.AZIMUTH] += gains.intoAzimuth(mean, 0) + azimuthRad;
        mean[AxisState.ALTITUDE] += gains.intoAltitude(mean, 0) + altitudeRad;
        // F P Fᵀ: F differs from the identity by two entries in each of its first two rows. First the rows, then the
        // columns.
        for (int j = 0; j < AxisState.SIZE; j++) {
            covariance[AxisState.at(AxisState.AZIMUTH, j)] +=
                    gains.azimuthOfAzimuth() * covariance[AxisState.at(AxisState.AZIMUTH_GAIN, j)]
                            + gains.azimuthOfAltitude() * covariance[AxisState.at(AxisState.ALTITUDE_INTO_AZIMUTH, j)];
            covariance[AxisState.at(AxisState.ALTITUDE, j)] +=
                    gains.altitudeOfAltitude() * covariance[AxisState.at(AxisState.ALTITUDE_GAIN, j)]
                            + gains.altitudeOfAzimuth() * covariance[AxisState.at(AxisState.AZIMUTH_INTO_ALTITUDE, j)];
        }
        for (int i = 0; i < AxisState.SIZE; i++) {
            int row = AxisState.at(i, 0);
            covariance[row + AxisState.AZIMUTH] += gains.intoAzimuth(covariance, row);
            covariance[row + AxisState.ALTITUDE] += gains.intoAltitude(covariance, row);
        }
        covariance[AxisState.at(AxisState.AZIMUTH, AxisState.AZIMUTH)] += azimuthVariance;
        covariance[AxisState.at(AxisState.ALTITUDE, AxisState.ALTITUDE)] += altitudeVariance;
        return new AxisState(state.site(), mean, symmetric(covariance), sensesAfter);
    }

    private static double[] symmetric(double[] matrix) {
        for (int i = 0; i < AxisState.SIZE; i++) {
            for (int j = 0; j < i; j++) {
                double middle = (matrix[AxisState.at(i, j)] + matrix[AxisState.at(j, i)]) / 2;
                matrix[AxisState.at(i, j)] = middle;
                matrix[AxisState.at(j, i)] = middle;
            }
        }
        return matrix;
    }

    /**
     * The entries of F off its unit diagonal: the sensitivity of a move to the screw parameters.
     *
     * @param azimuthOfAzimuth azimuth per relative error of the azimuth screw
     * @param azimuthOfAltitude azimuth per cross-gain of the altitude screw into azimuth
     * @param altitudeOfAltitude altitude per relative error of the altitude screw
     * @param altitudeOfAzimuth altitude per cross-gain of the azimuth screw into altitude
     */
    record Gains(
            double azimuthOfAzimuth, double azimuthOfAltitude, double altitudeOfAltitude, double altitudeOfAzimuth) {
        static final Gains NONE = new Gains(0, 0, 0, 0);

        /** The azimuth row of F, without its diagonal, times the vector that starts at {@code from}. */
        double intoAzimuth(double[] figures, int from) {
            return azimuthOfAzimuth * figures[from + AxisState.AZIMUTH_GAIN]
                    + azimuthOfAltitude * figures[from + AxisState.ALTITUDE_INTO_AZIMUTH];
        }

        /** Adds Fᵀ, without its diagonal, times the gradient that starts at {@code from}, in place. */
        void addTransposed(double[] slope, int from) {
            double azimuth = slope[from + AxisState.AZIMUTH];
            double altitude = slope[from + AxisState.ALTITUDE];
            slope[from + AxisState.AZIMUTH_GAIN] += azimuthOfAzimuth * azimuth;
            slope[from + AxisState.ALTITUDE_INTO_AZIMUTH] += azimuthOfAltitude * azimuth;
            slope[from + AxisState.ALTITUDE_GAIN] += altitudeOfAltitude * altitude;
            slope[from + AxisState.AZIMUTH_INTO_ALTITUDE] += altitudeOfAzimuth * altitude;
        }

        /** Applies it from the left and from the right to a symmetric row-major matrix, in place. */
        void addTransposedBothWays(double[] matrix) {
            for (int i = 0; i < AxisState.SIZE; i++) {
                addTransposed(matrix, AxisState.at(i, 0));
            }
            for (int j = 0; j < AxisState.SIZE; j++) {
                double azimuth = matrix[AxisState.at(AxisState.AZIMUTH, j)];
                double altitude = matrix[AxisState.at(AxisState.ALTITUDE, j)];
                matrix[AxisState.at(AxisState.AZIMUTH_GAIN, j)] += azimuthOfAzimuth * azimuth;
                matrix[AxisState.at(AxisState.ALTITUDE_INTO_AZIMUTH, j)] += azimuthOfAltitude * azimuth;
                matrix[AxisState.at(AxisState.ALTITUDE_GAIN, j)] += altitudeOfAltitude * altitude;
                matrix[AxisState.at(AxisState.AZIMUTH_INTO_ALTITUDE, j)] += altitudeOfAzimuth * altitude;
            }
        }

        /** The altitude row of F, without its diagonal, times the vector that starts at {@code from}. */
        double intoAltitude(double[] figures, int from) {
            return altitudeOfAltitude * figures[from + AxisState.ALTITUDE_GAIN]
                    + altitudeOfAzimuth * figures[from + AxisState.AZIMUTH_INTO_ALTITUDE];
        }
    }

    private static double square(double x) {
        return x * x;
    }
}
