package polewright.alignment.fix;

import polewright.alignment.sighting.AxisModel;
import polewright.alignment.sighting.CentredStars;
import polewright.alignment.sighting.FieldDrift;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.TurnedFrames;
import polewright.mount.AxisOffset;
import polewright.mount.rig.HandTurns;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** One thing that bears on the fix, in the order in which it happened. */
public sealed interface Step {
    /** The number of the event behind it. */
    long seq();

    /** A measurement, with its model at the site. */
    record Sighted(long seq, Sighting sighting, AxisModel model) implements Step {
        /**
         * Works out where the bodies stood.
         *
         * @throws polewright.sky.InputRefused when the sighting cannot have been made then and there
         */
        public static Sighted of(long seq, Sighting sighting, Site site, Weather weather) {
            return new Sighted(seq, sighting, sighting.model(site, weather));
        }

        /**
         * Whether a person read it off the sky, with an error of its own. Frames measure their own scatter, and the error of
         * a compass or a level stays the same all night.
         */
        boolean isByEye() {
            return !(sighting instanceof TurnedFrames
                            || sighting instanceof FieldDrift
                            || sighting instanceof CentredStars)
                    && sighting.sharedInstrument().isEmpty();
        }
    }

    /**
     * Screws turned, clockwise positive.
     *
     * @param azimuthTurns of the azimuth screw, all legs together
     * @param altitudeTurns of the altitude screw, all legs together
     * @param azimuthBack the last leg of the azimuth screw when it was turned past the goal and back, else 0
     * @param altitudeBack the same of the altitude screw
     * @param azimuthSigma how well the turns of the azimuth screw are known, 1 sigma; 0 when a hand counted them
     * @param altitudeSigma the same of the altitude screw
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
        /** Turned straight. */
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
     * Screws turned, of which one may have slipped, so that anything from none to all of its turns took effect.
     *
     * @param told the turns as they were told
     * @param screw the one that may have slipped
     */
    record Slipped(Turned told, Which screw) implements Step {
        /** One of the two screws. */
        public enum Which {
            AZIMUTH,
            ALTITUDE
        }

        @Override
        public long seq() {
            return told.seq();
        }
    }

    /**
     * Unlogged turns of unknown size.
     *
     * @param seq the event after which they were turned
     * @param azimuthSigma turns of the azimuth screw, 1 sigma about none; 0 when it was left alone
     * @param altitudeSigma the same of the altitude screw
     */
    record TurnedUnlogged(long seq, double azimuthSigma, double altitudeSigma) implements Step {
        // Most turns of a night are of a few at most (common practice).
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
     * Something shifted the axis without a screw: clamping, a knock.
     *
     * @param usual the shift on the sky that is expected
     * @param sigma 1 sigma about that on the sky, in each direction
     */
    record Shifted(long seq, AxisOffset usual, Angle sigma) implements Step {
        /** A shift that may go any way. */
        public Shifted(long seq, Angle sigma) {
            this(seq, AxisOffset.NONE, sigma);
        }
    }
}
