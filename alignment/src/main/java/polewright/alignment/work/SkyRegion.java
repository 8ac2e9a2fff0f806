package polewright.alignment.work;

import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/** The part of the sky that is observed. */
public sealed interface SkyRegion {
    /** Calls the visitor's method for this kind. */
    <R> R accept(Visitor<R> visitor);

    /**
     * One object, or several at one declination, over a range of hour angles.
     *
     * @param label what is there, e.g. {@code Vega}
     * @param declination apparent, of date
     * @param from hour angle at the start, west positive
     * @param to hour angle at the end, later than {@code from}, at most a day later
     */
    record Track(String label, Angle declination, Angle from, Angle to) implements SkyRegion {
        public Track {
            if (!(Math.abs(declination.degrees()) <= 90)) {
                throw new InputRefused(
                        "declination " + PlainNumber.asTyped(declination.degrees()) + " of '" + label
                                + "' is beyond 90 degrees",
                        "give degrees from -90 to 90");
            }
            double degrees = to.minus(from).degrees();
            if (!(degrees >= 0 && degrees <= 360)) {
                throw new InputRefused(
                        "the hour angles of '" + label + "' run backward or span more than a day",
                        "give the earlier first, west positive");
            }
        }

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.track(this);
        }
    }

    /**
     * Everything above an altitude.
     *
     * @param lowestAltitude true altitude, 5° to 85°
     * @param toThePole whether the {@link #ABOUT_THE_POLE} around a celestial pole are included: little is observed
     *     there, and a field there rotates faster than elsewhere
     */
    record Above(Angle lowestAltitude, boolean toThePole) implements SkyRegion {
        /** The radius around the pole that is left out unless requested. */
        public static final Angle ABOUT_THE_POLE = Angle.ofDegrees(10);

        /**
         * The lowest altitude at which most people observe: lower down, the atmosphere spoils the view (common
         * practice).
         */
        public static final Above THIRTY_DEGREES = new Above(Angle.ofDegrees(30));

        /** All of it except the area around the pole. */
        public Above(Angle lowestAltitude) {
            this(lowestAltitude, false);
        }

        public Above {
            if (!(lowestAltitude.degrees() >= 5 && lowestAltitude.degrees() <= 85)) {
                throw new InputRefused(
                        "a lowest altitude of " + PlainNumber.asTyped(lowestAltitude.degrees())
                                + " degrees is outside 5 to 85",
                        "give the lowest altitude you observe at; 30 is usual");
            }
        }

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.above(this);
        }
    }

    /**
     * One method for each kind, so that a new kind does not compile until every visitor handles it.
     *
     * @param <R> the result
     */
    interface Visitor<R> {
        R track(Track region);

        R above(Above region);
    }
}
