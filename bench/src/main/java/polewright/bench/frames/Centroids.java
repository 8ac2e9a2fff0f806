package polewright.bench.frames;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.bench.TrialOptions;
import polewright.image.star.FoundStar;
import polewright.image.star.StarFinder;
import polewright.image.star.StarList;
import polewright.mount.AxisPointing;
import polewright.simulation.camera.CameraAim;
import polewright.simulation.camera.CameraOptics;
import polewright.simulation.camera.CameraPath;
import polewright.simulation.camera.Detector;
import polewright.simulation.camera.Exposure;
import polewright.simulation.camera.FrameRenderer;
import polewright.simulation.camera.RenderedFrame;
import polewright.simulation.camera.SimulatedCamera;
import polewright.simulation.camera.SkyConditions;
import polewright.simulation.camera.TrueStar;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.place.RefractedDirection;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * How close the centroids of isolated stars come to the Cramér–Rao bound, by signal-to-noise ratio and image width,
 * on rendered frames of the sky by ideal optics and a flawless detector.
 */
public final class Centroids {
    private static final int FRAMES_PER_WIDTH = 100;
    private static final double[] WIDTHS_PIXELS = {1.8, 2.5, 4, 6};
    private static final double[] SIGNAL_EDGES = {10, 15, 25, 50, 100, 200};
    private static final double MOST_OVER_BOUND = 1.15;
    private static final double PIXEL_MICRONS = 4;
    private static final int COLUMNS = 1600;
    private static final int ROWS = 1200;
    private static final Site SITE = Site.ofDegrees(54.60, -2.90, 240);
    private static final Instant AT = Instant.parse("2026-11-25T20:00:00Z");

    private final FrameRenderer renderer = new FrameRenderer(StarAtlas.bundled());

    private Centroids() {}

    /**
     * One star's measured position compared with the truth.
     *
     * @param signalToNoise of the star
     * @param square of the error, pixels², both coordinates together
     * @param boundSquare the same of the bound
     * @param normalisedSquare squared error over the star's own variance, both coordinates together
     */
    private record Measured(double signalToNoise, double square, double boundSquare, double normalisedSquare) {}

    public static void main(String[] args) {
        System.exit(new Centroids().run(TrialOptions.of("centroids", args, FRAMES_PER_WIDTH)));
    }

    private int run(TrialOptions options) {
        System.out.printf(
                Locale.ROOT,
                "isolated stars of %d frames for each width, seeds %d on; error RMS over the bound, and mean square of"
                        + " error over its own sigma%n",
                options.count(),
                options.first());
        System.out.println("FWHM px   S/N          stars   missed   RMS px   over bound   (error/sigma)^2");
        Verdict verdict = new Verdict();
        double worst = 0;
        for (double width : WIDTHS_PIXELS) {
            List<Measured> measured = new ArrayList<>();
            List<Double> missed = new ArrayList<>();
            for (long seed = options.first(); seed < options.first() + options.count(); seed++) {
                measure(width, new SplittableRandom(seed), measured, missed);
            }
            for (int i = 1; i < SIGNAL_EDGES.length; i++) {
                double least = SIGNAL_EDGES[i - 1];
                double most = SIGNAL_EDGES[i];
                worst = Math.max(
                        worst,
                        report(
                                width,
                                least,
                                most,
                                measured.stream()
                                        .filter(m -> m.signalToNoise() >= least && m.signalToNoise() < most)
                                        .toList(),
                                missed.stream()
                                        .filter(s -> s >= least && s < most)
                                        .count()));
            }
        }
        verdict.require(
                worst <= MOST_OVER_BOUND,
                String.format(
                        Locale.ROOT, "RMS over the bound, worst line: %.3f (at most %.2f)", worst, MOST_OVER_BOUND));
        return verdict.status();
    }

    private static double report(double width, double least, double most, List<Measured> stars, long missed) {
        double square = stars.stream().mapToDouble(Measured::square).average().orElse(Double.NaN);
        double bound =
                stars.stream().mapToDouble(Measured::boundSquare).average().orElse(Double.NaN);
        double over = Math.sqrt(square / bound);
        System.out.printf(
                Locale.ROOT,
                "%5.1f     %3.0f to %3.0f   %6d   %6d   %6.4f   %8.3f   %10.3f%n",
                width,
                least,
                most,
                stars.size(),
                missed,
                Math.sqrt(square / 2),
                over,
                stars.stream().mapToDouble(Measured::normalisedSquare).average().orElse(Double.NaN) / 2);
        return over;
    }

    private void measure(double width, RandomGenerator random, List<Measured> measured, List<Double> missed) {
        Exposure exposure = exposure(width, random);
        RenderedFrame rendered = renderer.render(exposure, random);
        Pixels pixels = Pixels.of(exposure);
        StarList found = StarFinder.find(rendered.frame());
        List<TrueStar> stars = rendered.truth().stars();
        double alone = 6 * width + 6;
        PlaceGrid all = new PlaceGrid(
                stars.stream().map(star -> new Vector2D(star.x(), star.y())).toList(), alone);
        for (TrueStar star : stars) {
            CentroidBound bound = CentroidBound.of(star, pixels);
            if (bound.signalToNoise() < SIGNAL_EDGES[0]
                    || bound.signalToNoise() >= SIGNAL_EDGES[SIGNAL_EDGES.length - 1]
                    || !isAlone(star, all, alone)) {
                continue;
            }
            Optional<FoundStar> nearest = found.stars().stream()
                    .min(Comparator.comparingDouble(f -> Math.hypot(f.x() - star.x(), f.y() - star.y())))
                    .filter(f -> Math.hypot(f.x() - star.x(), f.y() - star.y()) < width);
            if (nearest.isEmpty()) {
                missed.add(bound.signalToNoise());
            } else {
                double dx = nearest.get().x() - star.x();
                double dy = nearest.get().y() - star.y();
                measured.add(new Measured(
                        bound.signalToNoise(),
                        dx * dx + dy * dy,
                        bound.xPixels() * bound.xPixels() + bound.yPixels() * bound.yPixels(),
                        Math.pow(dx / nearest.get().sigmaX(), 2)
                                + Math.pow(dy / nearest.get().sigmaY(), 2)));
            }
        }
    }

    private static boolean isAlone(TrueStar star, PlaceGrid all, double within) {
        return star.x() > within
                && star.y() > within
                && star.x() < COLUMNS - within
                && star.y() < ROWS - within
                && all.near(new Vector2D(star.x(), star.y())) == 1;
    }

    /** An exposure at 3″ a pixel, anywhere high up, from a dark sky to a bright one. */
    private static Exposure exposure(double width, RandomGenerator random) {
        double scaleArcsec = 3;
        Angle seeing = Angle.ofArcseconds(2);
        double blur = Math.sqrt(width * width - Math.pow(seeing.arcseconds() / scaleArcsec, 2));
        double focalMm = PIXEL_MICRONS / 1000 / Math.toRadians(scaleArcsec / 3600);
        SimulatedCamera camera = SimulatedCamera.of(
                "Clean",
                CameraOptics.clean(focalMm, 50, blur * PIXEL_MICRONS),
                Detector.flawless(COLUMNS, ROWS, PIXEL_MICRONS));
        return new Exposure(
                camera,
                CameraPath.tracking(
                        CameraAim.at(
                                RefractedDirection.of(
                                        new Angle(2 * Math.PI * random.nextDouble()),
                                        Angle.ofDegrees(Draw.between(35, 85, random))),
                                new Angle(2 * Math.PI * random.nextDouble())),
                        AxisPointing.atPole(SITE).northernEnd(SITE)),
                SITE,
                Weather.standardAt(SITE.heightMetres()),
                SkyConditions.EVEN.withSeeing(seeing).withSky(Draw.between(18.5, 21.5, random)),
                AT.plusSeconds((long) (86_400 * random.nextDouble())),
                Duration.ofMillis(Math.round(Draw.logBetween(300, 6000, random))));
    }
}
