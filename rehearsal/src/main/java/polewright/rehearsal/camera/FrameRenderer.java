package polewright.rehearsal.camera;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;
import polewright.frames.Frame;
import polewright.frames.FrameFacts;
import polewright.sky.atlas.StarAtlas;

/** Takes pictures of the real sky with a simulated camera. */
public final class FrameRenderer {
    // Stars that stand out by less than this of their own noise change nothing.
    private static final double FAINTEST_SIGNAL_TO_NOISE = 0.1;

    private final StarAtlas atlas;

    public FrameRenderer(StarAtlas atlas) {
        this.atlas = atlas;
    }

    /** One frame, as noisy as the camera makes it. */
    public RenderedFrame render(Exposure exposure, RandomGenerator random) {
        SkyView view = SkyView.of(exposure, 0);
        List<StarImage> stars = stars(exposure, view);
        float[] electrons = charge(exposure, stars);
        new StrayCharge(exposure.camera().detector()).addCosmicRays(electrons, exposure.seconds(), random);
        new Readout(exposure.camera().detector()).read(electrons, random);
        return developed(
                exposure, view, stars, electrons, exposure.camera().detector().fullCount());
    }

    /** The average of many such frames: no noise, no cosmic rays, no rounding, and wells without a bottom. */
    public RenderedFrame renderWithoutNoise(Exposure exposure) {
        SkyView view = SkyView.of(exposure, 0);
        List<StarImage> stars = stars(exposure, view);
        float[] electrons = charge(exposure, stars);
        new Readout(exposure.camera().detector()).withoutNoise(electrons);
        return developed(exposure, view, stars, electrons, Float.POSITIVE_INFINITY);
    }

    private List<StarImage> stars(Exposure exposure, SkyView view) {
        return new StarsInView(exposure, view).find(atlas, faintestMagnitude(exposure));
    }

    /** What each pixel holds on the average. */
    private static float[] charge(Exposure exposure, List<StarImage> stars) {
        SimulatedCamera camera = exposure.camera();
        Detector detector = camera.detector();
        float[] electrons = new float[detector.pixels()];
        StarPainter painter = new StarPainter(
                detector, electrons, fwhmPixels(exposure), camera.optics().haloFraction());
        stars.forEach(painter::paint);
        exposure.sky().satellites().forEach(painter::paint);
        addGlow(exposure, electrons);
        new StrayCharge(detector).addFaults(electrons, exposure.seconds());
        return electrons;
    }

    private static void addGlow(Exposure exposure, float[] electrons) {
        Detector detector = exposure.camera().detector();
        double seconds = exposure.seconds();
        double[] alongRow = fading(detector.width(), detector.ampGlow().reachPixels());
        double[] alongColumn = fading(detector.height(), detector.ampGlow().reachPixels());
        double sky = skyElectrons(exposure);
        Shade shade = new Shade(exposure);
        IntStream.range(0, detector.height()).parallel().forEach(row -> {
            double[] unshaded = new double[detector.width()];
            double glow = detector.ampGlow().electronsPerSecond() * alongColumn[row];
            for (int column = 0; column < unshaded.length; column++) {
                unshaded[column] = seconds * (detector.darkElectronsPerSecond() + glow * alongRow[column]);
            }
            shade.addSky(electrons, row, detector.width(), sky, unshaded);
        });
    }

    private static double[] fading(int size, double reach) {
        double[] fading = new double[size];
        for (int i = 0; i < size; i++) {
            fading[i] = Math.exp((i - size + 1) / reach);
        }
        return fading;
    }

    private static double skyElectrons(Exposure exposure) {
        double scaleArcsec = exposure.camera().scalePerPixel().arcseconds();
        return exposure.camera().electronsPerSecond(exposure.sky().magnitudePerArcsec2())
                * scaleArcsec
                * scaleArcsec
                * exposure.seconds();
    }

    private static double fwhmPixels(Exposure exposure) {
        SimulatedCamera camera = exposure.camera();
        return Math.hypot(
                exposure.sky().seeing().radians() / camera.scalePerPixel().radians(),
                camera.optics().blurMicrons() / camera.detector().pixelMicrons());
    }

    /** Where a star's light is a tenth of the noise under its image. */
    private static double faintestMagnitude(Exposure exposure) {
        Detector detector = exposure.camera().detector();
        double pixelVariance = skyElectrons(exposure)
                + detector.darkElectronsPerSecond() * exposure.seconds()
                + detector.readNoiseElectrons() * detector.readNoiseElectrons();
        double fwhm = fwhmPixels(exposure);
        double pixels = Math.max(1, 2.27 * fwhm * fwhm);
        double electrons = FAINTEST_SIGNAL_TO_NOISE * Math.sqrt(Math.max(0.1, pixelVariance) * pixels);
        return 2.5 * Math.log10(exposure.camera().electronsPerSecond(0) * exposure.seconds() / electrons);
    }

    private static RenderedFrame developed(
            Exposure exposure, SkyView view, List<StarImage> stars, float[] counts, float saturation) {
        SimulatedCamera camera = exposure.camera();
        Detector detector = camera.detector();
        FrameFacts facts = new FrameFacts(
                Optional.of(exposure.middle()),
                Optional.empty(),
                Optional.of(exposure.length()),
                OptionalDouble.of(camera.optics().focalLengthMm()),
                OptionalDouble.of(detector.pixelMicrons()),
                Optional.of(camera.name()));
        Shade shade = new Shade(exposure);
        List<TrueStar> inPicture = stars.stream()
                .map(star -> star.truth(shade))
                .filter(star -> star.x() >= -0.5
                        && star.x() < detector.width() - 0.5
                        && star.y() >= -0.5
                        && star.y() < detector.height() - 0.5)
                .toList();
        return new RenderedFrame(
                new Frame(detector.width(), detector.height(), counts, saturation, facts),
                new SkyTruth(exposure.middle(), view, camera.scalePerPixel(), inPicture));
    }
}
