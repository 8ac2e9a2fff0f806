package polewright.simulation.camera;

import java.util.Comparator;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.stream.Stream;
import polewright.image.Frame;
import polewright.sky.atlas.StarAtlas;

/** Renders frames of the real sky with a simulated camera. */
public final class FrameRenderer {
    private static final double NONE_BEYOND_ATLAS = Double.NEGATIVE_INFINITY;
    // Stars below this signal-to-noise ratio change nothing.
    private static final double FAINTEST_SIGNAL_TO_NOISE = 0.1;
    // Below this an invented star only adds to the roughness of the background.
    private static final double FAINTEST_INVENTED_SIGNAL_TO_NOISE = 2;

    private final StarAtlas atlas;
    private final double faintestInvented;

    private FrameRenderer(StarAtlas atlas, double faintestInvented) {
        this.atlas = atlas;
        this.faintestInvented = faintestInvented;
    }

    /** A renderer with only the stars of the atlas. */
    public FrameRenderer(StarAtlas atlas) {
        this(atlas, NONE_BEYOND_ATLAS);
    }

    /**
     * Adds invented stars below the atlas limit, down to this magnitude or the camera's limit: see {@link
     * FaintStars}.
     */
    public FrameRenderer withInventedStarsTo(double magnitude) {
        return new FrameRenderer(atlas, magnitude);
    }

    /** One frame, with the camera's noise. */
    public RenderedFrame render(Exposure exposure, RandomGenerator random) {
        SkyView view = SkyView.of(exposure, 0);
        CameraWork work = work(exposure);
        List<StarImage> stars = stars(exposure, view, work);
        return toFrame(exposure, view, stars, work.frame(work.charge(stars), exposure.middle(), random));
    }

    /** The mean of many such frames: no noise, no cosmic rays, no rounding and no saturation. */
    public RenderedFrame renderWithoutNoise(Exposure exposure) {
        SkyView view = SkyView.of(exposure, 0);
        CameraWork work = work(exposure);
        List<StarImage> stars = stars(exposure, view, work);
        return toFrame(exposure, view, stars, work.average(work.charge(stars), exposure.middle()));
    }

    private static CameraWork work(Exposure exposure) {
        return new CameraWork(exposure.camera(), exposure.sky(), exposure.length());
    }

    private List<StarImage> stars(Exposure exposure, SkyView view, CameraWork work) {
        StarsInView inView = new StarsInView(exposure, view);
        return Stream.concat(
                        inView.ofAtlas(atlas, work.faintestMagnitude(FAINTEST_SIGNAL_TO_NOISE)).stream(),
                        inView
                                .beyondAtlas(Math.min(
                                        faintestInvented, work.faintestMagnitude(FAINTEST_INVENTED_SIGNAL_TO_NOISE)))
                                .stream())
                .toList();
    }

    private static RenderedFrame toFrame(Exposure exposure, SkyView view, List<StarImage> stars, Frame frame) {
        Vignetting shade = new Vignetting(exposure.camera(), exposure.sky());
        List<TrueStar> inPicture = stars.stream()
                .map(star -> star.truth(shade))
                .filter(star -> star.x() >= -0.5
                        && star.x() < frame.width() - 0.5
                        && star.y() >= -0.5
                        && star.y() < frame.height() - 0.5)
                .sorted(Comparator.comparingDouble(TrueStar::magnitude))
                .toList();
        return new RenderedFrame(
                frame, new SkyTruth(exposure.middle(), view, exposure.camera().scalePerPixel(), inPicture));
    }
}
