package polewright.axis.fix;

/**
 * What the screws have turned out to do, against what the rig says of them.
 *
 * @param azimuthFactor azimuth made by the azimuth screw, over what was expected; 1 at first
 * @param altitudeFactor altitude made by the altitude screw, over what was expected; 1 at first
 * @param azimuthIntoAltitude altitude made by the azimuth screw, per unit of azimuth expected: a leaning base
 * @param altitudeIntoAzimuth azimuth made by the altitude screw, per unit of altitude expected
 * @param azimuthSigma 1 sigma of {@code azimuthFactor}
 * @param altitudeSigma 1 sigma of {@code altitudeFactor}
 */
public record ScrewGains(
        double azimuthFactor,
        double altitudeFactor,
        double azimuthIntoAltitude,
        double altitudeIntoAzimuth,
        double azimuthSigma,
        double altitudeSigma) {}
