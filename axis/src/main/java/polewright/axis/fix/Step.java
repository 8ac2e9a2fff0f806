package polewright.axis.fix;

import polewright.axis.sighting.AxisModel;
import polewright.axis.sighting.Sighting;
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
    }

    /** Screws turned, clockwise positive. */
    record Turned(long seq, double azimuthTurns, double altitudeTurns) implements Step {}

    /**
     * Something shifted the axis without a screw: clamping, a knock.
     *
     * @param sigma 1 sigma of the shift on the sky, in each direction
     */
    record Shifted(long seq, Angle sigma) implements Step {}
}
