package polewright.sky.place;

import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;

/**
 * Atmospheric conditions at the site, for refraction.
 *
 * @param pressureHpa station pressure (not reduced to sea level), hPa; 0 means no air
 * @param temperatureC air temperature, °C
 * @param relativeHumidity 0 to 1; its effect is under 0.1″ above 30° altitude
 */
public record Weather(double pressureHpa, double temperatureC, double relativeHumidity) {
    /** No atmosphere, for checks against airless formulas. */
    public static final Weather AIRLESS = new Weather(0, 10, 0);

    public Weather {
        if (!(pressureHpa >= 0 && pressureHpa <= 1100)) {
            throw new InputRefused(
                    "pressure " + PlainNumber.asTyped(pressureHpa) + " is outside 0 to 1100 hPa",
                    "give the pressure at the site in hPa (millibars), not inches or mmHg");
        }
        if (!(temperatureC >= -80 && temperatureC <= 60)) {
            throw new InputRefused(
                    "temperature " + PlainNumber.asTyped(temperatureC) + " is outside -80 to 60 C",
                    "give degrees Celsius");
        }
        if (!(relativeHumidity >= 0 && relativeHumidity <= 1)) {
            throw new InputRefused(
                    "relative humidity " + PlainNumber.asTyped(relativeHumidity) + " is outside 0 to 1",
                    "give a fraction, 0.6 for 60 %");
        }
    }

    /**
     * Mean conditions for a site whose weather is unknown: 10 °C, 50 % humidity, and the pressure of the ICAO standard
     * atmosphere (Doc 7488, troposphere) at its height. A night 15 °C or 15 hPa away from that changes refraction by 5
     * % or 1.5 %: 3″ at 45° altitude.
     */
    public static Weather standardAt(double heightMetres) {
        return new Weather(1013.25 * Math.pow(1 - 2.25577e-5 * heightMetres, 5.25588), 10, 0.5);
    }
}
