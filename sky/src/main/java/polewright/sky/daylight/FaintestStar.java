package polewright.sky.daylight;

import polewright.sky.angle.Angle;
import polewright.sky.place.AirlessDirection;

/**
 * The faintest star found without difficulty in a direction, V outside the atmosphere.
 *
 * <p>Subtracted from the eye's threshold: extinction, {@value #AIR_MAGNITUDES} magnitudes at the zenith and
 * proportional to the secant of the zenith distance; and a field factor of 2.5 in light, for a position known only
 * roughly (1.31) and an observer without practice (1.90): J. H. Taylor, Applied Optics 3 (1964) 562, from memory.
 *
 * <p>A telescope of aperture D and magnification M gathers t (D′/p)² of the light, p the eye's pupil, D′ the lesser of
 * D and M p, t = {@value #TRANSMISSION}; it spreads the sky's light over M² times the area; a star that seeing, of
 * diameter θ, blurs beyond 2 θ M = 900″ needs more light by the square root of that ratio, and one eye needs 1.41 times
 * the light that two need (Schaefer 1990, as in deanthedream/PrototypePlottingUtilsEXOSIMS,
 * VisualMagnitudes/telLimMags.py, e63dd6bb15b1). By day, more magnification darkens the sky but not the star, and that
 * is the whole gain.
 */
public final class FaintestStar {
    private static final double AIR_MAGNITUDES = 0.2;
    private static final double TRANSMISSION = 0.8;
    private static final double FIELD_FACTOR = 1.31 * 1.90;
    private static final double ONE_EYE = 1.41;
    private static final double SEEING_ARCSEC = 3;
    private static final double SHARP_ARCSEC = 900;

    private FaintestStar() {}

    public static double byEye(AirlessDirection look, AirlessDirection sun) {
        return EyeThreshold.magnitude(SkyLuminance.toward(look, sun)) - losses(look);
    }

    public static double through(Instrument instrument, AirlessDirection look, AirlessDirection sun) {
        double sky = SkyLuminance.toward(look, sun);
        double pupilMm = EyeThreshold.pupilMm(sky);
        double usedMm = Math.min(instrument.apertureMm(), instrument.magnification() * pupilMm);
        double lightGain = TRANSMISSION * Math.pow(usedMm / pupilMm, 2);
        double skyShare = lightGain / Math.pow(instrument.magnification(), 2);
        double blur = Math.max(1, Math.sqrt(2 * SEEING_ARCSEC * instrument.magnification() / SHARP_ARCSEC));
        return EyeThreshold.magnitude(sky * skyShare) + magnitudes(lightGain / (blur * ONE_EYE)) - losses(look);
    }

    private static double losses(AirlessDirection look) {
        double airMass = 1 / Math.max(look.enu().getZ(), Angle.ofDegrees(5).sin());
        return AIR_MAGNITUDES * airMass + magnitudes(FIELD_FACTOR);
    }

    private static double magnitudes(double lightRatio) {
        return 2.5 * Math.log10(lightRatio);
    }
}
