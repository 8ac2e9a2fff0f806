package polewright.bench.frames;

import polewright.simulation.camera.Detector;
import polewright.simulation.camera.Exposure;
import polewright.simulation.camera.SimulatedCamera;
import polewright.simulation.camera.TrueStar;

/**
 * The noise under the stars of one exposure, calculated from camera and sky, independently of the code under test.
 *
 * @param fwhmPixels width of a star's core
 * @param variance of a pixel of empty sky at the centre of the picture, electrons²
 */
record Pixels(double fwhmPixels, double variance) {
    private static final double FWHM_PER_SIGMA = 2 * Math.sqrt(2 * Math.log(2));
    // Counts are whole numbers.
    private static final double ROUNDING_VARIANCE = 1.0 / 12;

    static Pixels of(Exposure exposure) {
        SimulatedCamera camera = exposure.camera();
        Detector detector = camera.detector();
        double seconds = exposure.length().toNanos() / 1e9;
        double scaleArcsec = camera.scalePerPixel().arcseconds();
        double sky =
                camera.electronsPerSecond(exposure.sky().magnitudePerArcsec2()) * scaleArcsec * scaleArcsec * seconds;
        double fwhm = Math.hypot(
                exposure.sky().seeing().arcseconds() / scaleArcsec,
                camera.optics().blurMicrons() / detector.pixelMicrons());
        double gain = detector.electronsPerCount();
        return new Pixels(
                fwhm,
                sky
                        + detector.darkElectronsPerSecond() * seconds
                        + detector.readNoiseElectrons() * detector.readNoiseElectrons()
                        + ROUNDING_VARIANCE * gain * gain);
    }

    double sigmaPixels() {
        return fwhmPixels / FWHM_PER_SIGMA;
    }

    /**
     * A star's signal-to-noise ratio, including its own shot noise, over the whole image: for a Gaussian σ drawn out
     * into a trail, the noise is that of about 2 √π σ √(4 π σ² + trail²) pixels.
     */
    double signalToNoise(TrueStar star) {
        double sigma = sigmaPixels();
        double trail = star.trailPixels();
        double area = 2 * Math.sqrt(Math.PI) * sigma * Math.sqrt(4 * Math.PI * sigma * sigma + trail * trail);
        return star.electrons() / Math.sqrt(star.electrons() + Math.max(1, area) * variance);
    }
}
