package polewright.alignment.fix;

import polewright.alignment.sighting.AxisModel;
import polewright.alignment.sighting.Sighting;
import polewright.mount.AxisOffset;
import polewright.mount.rig.HandTurns;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** One event that affects the fix: a sighting or a move of the axis. */
public sealed interface Step {
    /** The number of the logged event. */
    long seq();

    /** A measurement, with its model at the site. */
    record Sighted(long seq, Sighting sighting, AxisModel model) implements Step {
        /**
         * Computes where the observed bodies were.
         *
         * @throws polewright.sky.InputRefused if the sighting could not have been made at that time and place
         */
        public static Sighted of(long seq, Sighting sighting, Site site, Weather weather) {
            return new Sighted(seq, sighting, sighting.model(site, weather));
        }
    }

    /**
     * Turns of the screws, clockwise positive.
     *
     * @param azimuthTurns net turns of the azimuth screw
     * @param altitudeTurns net turns of the altitude screw
     * @param azimuthBack the last leg of the azimuth screw if it was turned past the goal and back, else 0
     * @param altitudeBack the same for the altitude screw
     * @param azimuthSigma uncertainty of the azimuth turns, 1 sigma; 0 if they were counted by hand
     * @param altitudeSigma the same for the altitude screw
     */
    record Turned(
            long seq,
            double azimuthTurns,
            double altitudeTurns,
            double azimuthBack,
            double altitudeBack,
            double azimuthSigma,
            double altitudeSigma)
            implements Step {
        /** Each screw turned in one go. */
        public Turned(long seq, double azimuthTurns, double altitudeTurns) {
            this(seq, HandTurns.straight(azimuthTurns), HandTurns.straight(altitudeTurns));
        }

        public Turned(long seq, HandTurns azimuth, HandTurns altitude) {
            this(
                    seq,
                    azimuth.net(),
                    altitude.net(),
                    azimuth.back(),
                    altitude.back(),
                    azimuth.sigma(),
                    altitude.sigma());
        }

        HandTurns azimuth() {
            return new HandTurns(azimuthTurns, azimuthBack, azimuthSigma);
        }

        HandTurns altitude() {
            return new HandTurns(altitudeTurns, altitudeBack, altitudeSigma);
        }
    }

    /**
     * Turns during which one screw may have slipped, so that none to all of its turns took effect.
     *
     * @param entered the turns as entered
     * @param screw the one that may have slipped
     */
    record Slipped(Turned entered, Which screw) implements Step {
        /** One of the two screws. */
        public enum Which {
            AZIMUTH,
            ALTITUDE
        }

        @Override
        public long seq() {
            return entered.seq();
        }
    }

    /**
     * Unlogged turns of unknown size.
     *
     * @param seq the event after which they were turned
     * @param azimuthSigma turns of the azimuth screw, 1 sigma about zero; 0 if it was not turned
     * @param altitudeSigma the same for the altitude screw
     */
    record TurnedUnlogged(long seq, double azimuthSigma, double altitudeSigma) implements Step {
        // Most adjustments are of a few turns at most (common practice).
        private static final double USUAL_TURNS = 3;

        /** Turns of these screws. */
        public static TurnedUnlogged after(long seq, boolean azimuth, boolean altitude) {
            return new TurnedUnlogged(seq, azimuth ? USUAL_TURNS : 0, altitude ? USUAL_TURNS : 0);
        }

        public boolean isOfBoth() {
            return azimuthSigma > 0 && altitudeSigma > 0;
        }
    }

    /**
     * A shift of the axis not made with a screw: clamping, a knock.
     *
     * @param usual the expected shift on the sky
     * @param sigma 1 sigma about that on the sky, in each direction
     */
    record Shifted(long seq, AxisOffset usual, Angle sigma) implements Step {
        /** A shift of unknown direction. */
        public Shifted(long seq, Angle sigma) {
            this(seq, AxisOffset.NONE, sigma);
        }
    }
}
