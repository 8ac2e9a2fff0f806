package polewright.simulation.camera;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;
import polewright.image.Frame;
import polewright.image.FrameFacts;

/** Turns the images of stars, from any source, into pixel charge and then into a frame. */
final class CameraWork {
    // Times the square of the full width at half maximum: the effective number of noise pixels under a star's image,
    // 4π sigma².
    private static final double NOISE_PIXELS_PER_SQUARE_WIDTH = Math.PI / (2 * Math.log(2));

    private final SimulatedCamera camera;
    private final Detector detector;
    private final SkyConditions sky;
    private final Duration length;
    private final double seconds;

    CameraWork(SimulatedCamera camera, SkyConditions sky, Duration length) {
        this.camera = camera;
        this.detector = camera.detector();
        this.sky = sky;
        this.length = length;
        this.seconds = length.toNanos() / 1e9;
    }

    /** The mean charge of each pixel. */
    float[] charge(List<StarImage> stars) {
        float[] electrons = new float[detector.pixels()];
        StarPainter painter = new StarPainter(
                detector, electrons, fwhmPixels(), camera.optics().haloFraction());
        stars.forEach(painter::paint);
        sky.satellites().forEach(painter::paint);
        addGlow(electrons);
        new StrayCharge(detector).addFaults(electrons, seconds);
        return electrons;
    }

    /** One noisy frame of that charge; the array becomes the frame's. */
    Frame frame(float[] electrons, Instant middle, RandomGenerator random) {
        new StrayCharge(detector).addCosmicRays(electrons, seconds, random);
        new Readout(detector).read(electrons, random);
        return new Frame(detector.width(), detector.height(), electrons, detector.fullCount(), facts(middle));
    }

    /** The mean of many such frames, without cosmic rays, rounding or any limit; the array becomes the frame's. */
    Frame average(float[] electrons, Instant middle) {
        new Readout(detector).withoutNoise(electrons);
        return new Frame(detector.width(), detector.height(), electrons, Float.POSITIVE_INFINITY, facts(middle));
    }

    /** Magnitude, after extinction, of a star with this signal-to-noise ratio. */
    double faintestMagnitude(double signalToNoise) {
        return 2.5 * Math.log10(camera.electronsPerSecond(0) * seconds / electronsFor(signalToNoise));
    }

    /**
     * Electrons that a star must leave to reach this signal-to-noise ratio over the noise of sky and detector under
     * its image.
     */
    double electronsFor(double signalToNoise) {
        double pixelVariance = skyElectrons()
                + detector.darkElectronsPerSecond() * seconds
                + detector.readNoiseElectrons() * detector.readNoiseElectrons();
        double fwhm = fwhmPixels();
        double pixels = Math.max(1, NOISE_PIXELS_PER_SQUARE_WIDTH * fwhm * fwhm);
        return signalToNoise * Math.sqrt(Math.max(0.1, pixelVariance) * pixels);
    }

    private void addGlow(float[] electrons) {
        double[] alongRow = fading(detector.width(), detector.ampGlow().reachPixels());
        double[] alongColumn = fading(detector.height(), detector.ampGlow().reachPixels());
        double clearSky = skyElectrons();
        Vignetting shade = new Vignetting(camera, sky);
        IntStream.range(0, detector.height()).parallel().forEach(row -> {
            double dark = seconds * detector.darkElectronsPerSecond();
            double glow = seconds * detector.ampGlow().electronsPerSecond() * alongColumn[row];
            shade.addSky(electrons, row, detector.width(), clearSky, dark, glow, alongRow);
        });
    }

    private static double[] fading(int size, double reach) {
        double[] fading = new double[size];
        for (int i = 0; i < size; i++) {
            fading[i] = Math.exp((i - size + 1) / reach);
        }
        return fading;
    }

    private double skyElectrons() {
        double scaleArcsec = camera.scalePerPixel().arcseconds();
        return camera.electronsPerSecond(sky.magnitudePerArcsec2()) * scaleArcsec * scaleArcsec * seconds;
    }

    private double fwhmPixels() {
        return Math.hypot(
                sky.seeing().radians() / camera.scalePerPixel().radians(),
                camera.optics().blurMicrons() / detector.pixelMicrons());
    }

    private FrameFacts facts(Instant middle) {
        return new FrameFacts(
                Optional.of(middle),
                Optional.empty(),
                Optional.of(length),
                OptionalDouble.of(camera.optics().focalLengthMm()),
                OptionalDouble.of(detector.pixelMicrons()),
                Optional.of(camera.name()));
    }
}
