package polewright.bench.independent.truth;

import java.util.random.RandomGenerator;

/**
 * The air that refracts light.
 *
 * @param pressureHpa at the site
 * @param temperatureC of the air
 */
public record Air(double pressureHpa, double temperatureC) {
    private static final double PRESSURE_SIGMA_HPA = 8;
    private static final double TEMPERATURE_SIGMA_C = 7;

    /** For checks against airless formulas. */
    public static final Air NONE = new Air(0, 10);

    /** Tonight's, scattered about the standard atmosphere (ICAO Doc 7488) and 10 °C. */
    public static Air drawn(double heightMetres, RandomGenerator random) {
        double standard = 1013.25 * Math.pow(1 - 2.25577e-5 * heightMetres, 5.25588);
        return new Air(
                standard + PRESSURE_SIGMA_HPA * random.nextGaussian(),
                10 + TEMPERATURE_SIGMA_C * random.nextGaussian());
    }
}
