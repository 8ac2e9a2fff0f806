package polewright.alignment.work;

import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/** Where on the sky something is looked at. */
public sealed interface SkyRegion {
    /**
     * One object, or things at one declination, over a range of hour angles.
     *
     * @param label what is there, e.g. {@code Vega}
     * @param declination apparent, of date
     * @param from hour angle at the beginning, west positive
     * @param to hour angle at the end, later than {@code from}, at most a day
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
    }

    /**
     * Anything above an altitude.
     *
     * @param lowestAltitude true altitude, 5° to 85°
     * @param toThePole whether the last {@link #ABOUT_THE_POLE} about a celestial pole count too: few look there, and a field
     *     there turns faster than elsewhere
     */
    record Above(Angle lowestAltitude, boolean toThePole) implements SkyRegion {
        /** How near the pole is left out unless it is asked for. */
        public static final Angle ABOUT_THE_POLE = Angle.ofDegrees(10);

        /** As low as most people look: lower, air spoils the view (common practice). */
        public static final Above THIRTY_DEGREES = new Above(Angle.ofDegrees(30));

        /** All of it but what is close to a pole. */
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
    }
}
