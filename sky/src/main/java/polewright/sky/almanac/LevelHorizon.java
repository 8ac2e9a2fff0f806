package polewright.sky.almanac;

import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;
import polewright.sky.place.Weather;

/**
 * A level horizon, and the air that lifts a body over it: what rising and setting are reckoned from.
 *
 * @param dip how far below the horizontal the horizon is seen
 * @param refraction lift of a body that is seen on the horizon
 */
public record LevelHorizon(Angle dip, Angle refraction) {
    /** The almanacs' convention: 34′ of refraction, no dip. */
    public static final LevelHorizon ALMANAC = new LevelHorizon(Angle.ZERO, Angle.ofArcminutes(34));

    /** Dip with mean refraction along the ground, arcminutes for one metre; it grows as the root of the height. */
    private static final double DIP_ARCMIN_PER_ROOT_METRE = 1.76;

    private static final double HIGHEST_METRES = 9000;

    /**
     * For a site that looks down on its horizon (a hill over the sea, an edge over a plain).
     *
     * <p>Dip = 1.76′ √h. Source: the Nautical Almanac's table of dip (from memory; about 8 % under the geometric 1.93′ √h,
     * because air bends the line of sight with the ground).
     *
     * @param metres height of the eye above the ground or water that makes the horizon, 0 to 9000 m; not above the sea
     */
    public static LevelHorizon seenFrom(double metres) {
        if (!(metres >= 0 && metres <= HIGHEST_METRES)) {
            throw new InputRefused(
                    "a height of " + PlainNumber.asTyped(metres) + " m over the horizon is outside 0 to 9000",
                    "give metres above the ground or water that forms the horizon");
        }
        return new LevelHorizon(
                Angle.ofArcminutes(DIP_ARCMIN_PER_ROOT_METRE * Math.sqrt(metres)), ALMANAC.refraction());
    }

    /**
     * With the refraction of this air instead: 34′ scaled by P / 1010 hPa and 283 K / T (J. Meeus, <i>Astronomical
     * Algorithms</i>, ch. 16). Layers of air close to the ground can change it by several arcminutes more, and no
     * thermometer tells.
     */
    public LevelHorizon inAirOf(Weather weather) {
        double scale = weather.pressureHpa() / 1010 * 283 / (273 + weather.temperatureC());
        return new LevelHorizon(dip, ALMANAC.refraction().times(scale));
    }

    /** Airless altitude of a point that is seen on this horizon; not positive. */
    public Angle airlessAltitude() {
        return dip.plus(refraction).negated();
    }
}
