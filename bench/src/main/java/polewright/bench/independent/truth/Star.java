package polewright.bench.independent.truth;

/**
 * A catalogue star.
 *
 * @param name as the person calls it
 * @param rightAscension ICRS at J2000.0, radians
 * @param declination ICRS at J2000.0, radians
 * @param motionRaMasPerYear proper motion including cos δ
 * @param motionDecMasPerYear proper motion
 * @param parallaxMas parallax
 * @param velocityKmPerSecond receding positive
 * @param magnitude Johnson V
 */
public record Star(
        String name,
        double rightAscension,
        double declination,
        double motionRaMasPerYear,
        double motionDecMasPerYear,
        double parallaxMas,
        double velocityKmPerSecond,
        double magnitude) {}
