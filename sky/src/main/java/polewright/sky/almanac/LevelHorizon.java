package polewright.sky.almanac;

import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;
import polewright.sky.place.Weather;

/**
 * A level horizon and the refraction on it, which define rising and setting.
 *
 * @param dip depression of the visible horizon below the horizontal
 * @param refraction lift of a body seen on the horizon
 */
public record LevelHorizon(Angle dip, Angle refraction) {
    /** The almanacs' convention: 34′ of refraction, no dip. */
    public static final LevelHorizon ALMANAC = new LevelHorizon(Angle.ZERO, Angle.ofArcminutes(34));

    /** Dip with mean terrestrial refraction, arcminutes at one metre; it grows with the square root of the height. */
    private static final double DIP_ARCMIN_PER_ROOT_METRE = 1.76;

    private static final double HIGHEST_METRES = 9000;

    /**
     * The horizon of a site that looks down on it (a hill over the sea, an edge over a plain).
     *
     * <p>Dip = 1.76′ √h. Source: the Nautical Almanac's dip (2022, p. 9, as in ion1/sextant-fix,
     * _octave_old/corrected_altitude.m, 2f38aa29f471; about 8 % under the geometric 1.93′ √h, because air bends the line
     * of sight with the ground).
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
     * The same horizon with the refraction of this air: 34′ scaled by P / 1010 hPa and 283 K / T (J. Meeus,
     * <i>Astronomical Algorithms</i>, ch. 16). Layers of air close to the ground can change it by several arcminutes
     * more, and no thermometer shows that.
     */
    public LevelHorizon inAirOf(Weather weather) {
        double scale = weather.pressureHpa() / 1010 * 283 / (273 + weather.temperatureC());
        return new LevelHorizon(dip, ALMANAC.refraction().times(scale));
    }

    /** Airless altitude of a point seen on this horizon; never positive. */
    public Angle airlessAltitude() {
        return dip.plus(refraction).negated();
    }
}
