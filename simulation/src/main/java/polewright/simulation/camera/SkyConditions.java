package polewright.simulation.camera;

import java.util.List;
import java.util.Optional;
import polewright.sky.angle.Angle;

/**
 * The state of the sky in the camera's direction.
 *
 * @param seeing width of a star's image from the air alone, full width at half maximum
 * @param magnitudePerArcsec2 background brightness, V per square arcsecond
 * @param gradient relative excess of the background at one edge of the picture over the centre, and its deficit at
 *     the other
 * @param gradientDirectionRad where in the picture it is brightest: 0 right, π/2 down
 * @param extinctionPerAirmass extinction of a star at the zenith, magnitudes
 * @param clouds over part of the picture, if any
 * @param satellites that cross during the exposure
 */
public record SkyConditions(
        Angle seeing,
        double magnitudePerArcsec2,
        double gradient,
        double gradientDirectionRad,
        double extinctionPerAirmass,
        Optional<CloudBank> clouds,
        List<SatelliteTrail> satellites) {
    /** A country sky on an ordinary night. */
    public static final SkyConditions COUNTRY =
            new SkyConditions(Angle.ofArcseconds(2.8), 20.8, 0.08, 0.6, 0.25, Optional.empty(), List.of());

    /** A bright sky over a town. */
    public static final SkyConditions TOWN =
            new SkyConditions(Angle.ofArcseconds(3.5), 18.2, 0.2, 1.2, 0.35, Optional.empty(), List.of());

    /** Uniform, dark and clear, without extinction. */
    public static final SkyConditions EVEN =
            new SkyConditions(Angle.ofArcseconds(2.5), 21.5, 0, 0, 0, Optional.empty(), List.of());

    public SkyConditions {
        satellites = List.copyOf(satellites);
    }

    public SkyConditions with(CloudBank bank) {
        return new SkyConditions(
                seeing,
                magnitudePerArcsec2,
                gradient,
                gradientDirectionRad,
                extinctionPerAirmass,
                Optional.of(bank),
                satellites);
    }

    public SkyConditions with(List<SatelliteTrail> others) {
        return new SkyConditions(
                seeing, magnitudePerArcsec2, gradient, gradientDirectionRad, extinctionPerAirmass, clouds, others);
    }

    public SkyConditions withSeeing(Angle other) {
        return new SkyConditions(
                other, magnitudePerArcsec2, gradient, gradientDirectionRad, extinctionPerAirmass, clouds, satellites);
    }

    public SkyConditions withSky(double otherMagnitudePerArcsec2) {
        return new SkyConditions(
                seeing,
                otherMagnitudePerArcsec2,
                gradient,
                gradientDirectionRad,
                extinctionPerAirmass,
                clouds,
                satellites);
    }

    /**
     * Extinction in magnitudes at this apparent altitude: relative air mass by F. Kasten and A. T. Young (<i>Applied
     * Optics</i> 28, 1989, 4735).
     */
    double extinction(Angle apparentAltitude) {
        double deg = Math.max(0, apparentAltitude.degrees());
        double airmass = 1 / (Math.sin(Math.toRadians(deg)) + 0.50572 * Math.pow(deg + 6.07995, -1.6364));
        return extinctionPerAirmass * airmass;
    }
}
