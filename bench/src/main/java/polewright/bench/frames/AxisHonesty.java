package polewright.bench.frames;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import java.util.random.RandomGenerator;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.alignment.camera.AxisFromFrames;
import polewright.bench.TrialOptions;
import polewright.image.match.FrameMatcher;
import polewright.image.match.MatchHint;
import polewright.image.match.MatchedFrame;
import polewright.image.match.ScaleRange;
import polewright.image.match.SkyPatch;
import polewright.image.star.StarFinder;
import polewright.mount.AxisEstimate;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Rig;
import polewright.simulation.Drive;
import polewright.simulation.HiddenWedge;
import polewright.simulation.SimulatedFork;
import polewright.simulation.SimulatedPhotographer;
import polewright.simulation.TubeOnFork;
import polewright.simulation.camera.AmpGlow;
import polewright.simulation.camera.CameraOptics;
import polewright.simulation.camera.Detector;
import polewright.simulation.camera.Distortion;
import polewright.simulation.camera.FrameRenderer;
import polewright.simulation.camera.PixelFaults;
import polewright.simulation.camera.RenderedFrame;
import polewright.simulation.camera.SimulatedCamera;
import polewright.simulation.camera.SkyConditions;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/**
 * How accurate the axis from three frames is, and whether its stated uncertainty is right: from a hidden axis to
 * pixels, stars, matches, attitudes and back. Only right ascension is turned, by 30° from each frame to the next.
 *
 * <p>The stars of the sky are a little off their places in the atlas ({@link StrayedSky}). The camera has 1.9
 * megapixels of 2″, 0.9° by 0.67°. Trials whose frames have fewer than {@link #FEWEST_STARS} matched stars are left
 * out and counted.
 */
public final class AxisHonesty {
    private static final int TRIALS = 500;
    private static final int FEWEST_STARS = 30;
    private static final double MOST_RMS_ARCSEC = 3;
    private static final double LEAST_WITHIN = 0.93;
    private static final double MOST_WITHIN = 0.97;
    // 95 % of a normal variate, and of chi-squared with 2 degrees of freedom.
    private static final double SIGMAS_95 = 1.959_964;
    private static final double REGION_95 = -2 * Math.log(0.05);

    private static final Angle STEP = Angle.ofDegrees(30);
    private static final int FRAMES = 3;
    private static final Duration BETWEEN = Duration.ofSeconds(40);
    private static final Instant FIRST_DAY = Instant.parse("2026-01-01T00:00:00Z");
    private static final Angle LOWEST = Angle.ofDegrees(20);
    // In a richer field 30 matched stars are more likely.
    private static final double WANTED_STARS = 1.25 * FEWEST_STARS;

    private static final SimulatedCamera CAMERA = SimulatedCamera.of(
            "Two arcseconds",
            new CameraOptics(309.4, 70, 6, 0.05, 0.15, Distortion.radial(0.001), false),
            Detector.ofGuideCamera(1600, 1200, 3.0, new AmpGlow(2, 120), new PixelFaults(20_264, 2e-5, 40, 1e-6)));

    private final StarAtlas atlas = StarAtlas.bundled();
    private final FrameMatcher matcher = new FrameMatcher(atlas);
    private final FrameRenderer renderer = new FrameRenderer(StrayedSky.ofAtlas()).withInventedStarsTo(14);
    private int tooFewStars;
    private int unmatched;

    private AxisHonesty() {}

    /** One axis compared with the truth. */
    private record Trial(
            Site site,
            boolean tracking,
            AxisEstimate estimate,
            AxisOffset error,
            Angle azimuthError,
            Angle altitudeError) {
        double normalisedSquare() {
            return estimate.offsetCovariance(site).normalisedSquare(error);
        }

        double azimuthSigmas() {
            return Math.abs(azimuthError.radians()) / estimate.azimuthSigma().radians();
        }

        double altitudeSigmas() {
            return Math.abs(altitudeError.radians()) / estimate.altitudeSigma().radians();
        }
    }

    public static void main(String[] args) {
        System.exit(new AxisHonesty().run(TrialOptions.of("axis-honesty", args, TRIALS)));
    }

    private int run(TrialOptions options) {
        System.out.printf(
                Locale.ROOT,
                "%d axes from %d frames %.0f degrees apart, seeds %d on; %d by %d pixels of %.2f\", tracking and"
                        + " standing, both hemispheres, latitudes 20 to 60%n",
                options.count(),
                FRAMES,
                STEP.degrees(),
                options.first(),
                CAMERA.detector().width(),
                CAMERA.detector().height(),
                CAMERA.scalePerPixel().arcseconds());
        List<Trial> trials = new ArrayList<>();
        for (long seed = options.first(); trials.size() < options.count(); seed++) {
            trial(seed).ifPresent(trials::add);
        }
        System.out.printf(
                Locale.ROOT,
                "left out: %d with fewer than %d matched stars on a frame, %d with a frame not placed%n",
                tooFewStars,
                FEWEST_STARS,
                unmatched);
        System.out.println("                     trials   east   up   total RMS   predicted   mean square/2");
        report("all", trials);
        report("tracking", trials.stream().filter(Trial::tracking).toList());
        report("standing", trials.stream().filter(t -> !t.tracking()).toList());
        report(
                "north",
                trials.stream().filter(t -> t.site().latitude().radians() > 0).toList());
        report(
                "south",
                trials.stream().filter(t -> t.site().latitude().radians() < 0).toList());

        Verdict verdict = new Verdict();
        double rms = rms(trials, t -> t.error().distance().arcseconds());
        verdict.require(
                rms <= MOST_RMS_ARCSEC,
                String.format(Locale.ROOT, "error RMS %.2f\" (at most %.0f\")", rms, MOST_RMS_ARCSEC));
        within(verdict, trials, "95 % region of azimuth", t -> t.azimuthSigmas() / SIGMAS_95);
        within(verdict, trials, "95 % region of altitude", t -> t.altitudeSigmas() / SIGMAS_95);
        within(verdict, trials, "95 % region of both", t -> t.normalisedSquare() / REGION_95);
        return verdict.status();
    }

    private static void within(
            Verdict verdict, List<Trial> trials, String region, ToDoubleFunction<Trial> overItsEdge) {
        double share =
                trials.stream().filter(t -> overItsEdge.applyAsDouble(t) <= 1).count() / (double) trials.size();
        verdict.require(
                share >= LEAST_WITHIN && share <= MOST_WITHIN,
                String.format(Locale.ROOT, "%s holds the truth in %.1f %% (93 to 97 %%)", region, 100 * share));
    }

    private static void report(String which, List<Trial> trials) {
        System.out.printf(
                Locale.ROOT,
                "%-20s %6d %6.2f %6.2f %6.2f\"     %6.2f\"      %6.3f%n",
                which,
                trials.size(),
                rms(trials, t -> t.error().east().arcseconds()),
                rms(trials, t -> t.error().up().arcseconds()),
                rms(trials, t -> t.error().distance().arcseconds()),
                rms(
                        trials,
                        t -> Math.hypot(
                                t.estimate()
                                        .offsetCovariance(t.site())
                                        .sigmaEast()
                                        .arcseconds(),
                                t.estimate()
                                        .offsetCovariance(t.site())
                                        .sigmaUp()
                                        .arcseconds())),
                trials.stream().mapToDouble(Trial::normalisedSquare).average().orElse(Double.NaN) / 2);
    }

    private static double rms(List<Trial> trials, ToDoubleFunction<Trial> figure) {
        return Math.sqrt(
                trials.stream().mapToDouble(figure).map(v -> v * v).average().orElse(Double.NaN));
    }

    private Optional<Trial> trial(long seed) {
        RandomGenerator random = new SplittableRandom(seed);
        int hemisphere = seed % 2 == 0 ? 1 : -1;
        boolean tracking = Math.floorMod(seed, 4L) < 2;
        Site site = Site.ofDegrees(
                hemisphere * Draw.between(20, 60, random), Draw.between(-180, 180, random), 2000 * random.nextDouble());
        Weather weather = Weather.standardAt(site.heightMetres());
        Instant first = FIRST_DAY.plusSeconds((long) (365 * 86_400 * random.nextDouble()));
        AxisOffset offset =
                new AxisOffset(Angle.ofDegrees(random.nextGaussian()), Angle.ofDegrees(random.nextGaussian()));
        HiddenWedge wedge = HiddenWedge.of(site, Rig.typicalForkOnWedge(), offset, random);
        TubeOnFork tube = new TubeOnFork(
                Angle.ofArcminutes(10 * random.nextGaussian()),
                Angle.ofArcminutes(10 * random.nextGaussian()),
                new Angle(2 * Math.PI * random.nextDouble()),
                Angle.ZERO);
        // With the drive off stars trail: a second is 8 pixels at the equator.
        Duration exposure = tracking ? Duration.ofSeconds(4) : Duration.ofSeconds(1);
        Optional<SimulatedFork> fork = inRichFields(
                SimulatedFork.on(wedge, tube, first).driven(tracking ? Drive.TRACKING : Drive.STANDING, first),
                site,
                weather,
                first,
                random);
        if (fork.isEmpty()) {
            tooFewStars++;
            return Optional.empty();
        }
        SimulatedPhotographer photographer = new SimulatedPhotographer(
                renderer, CAMERA, site, weather, SkyConditions.COUNTRY.withSky(Draw.between(19, 21.5, random)));
        List<CameraAttitude> attitudes = new ArrayList<>();
        for (RenderedFrame frame :
                photographer.takeTurning(fork.get(), first, STEP, FRAMES, BETWEEN, exposure, random)) {
            if (!(matcher.match(StarFinder.find(frame.frame()), hint(frame)) instanceof MatchedFrame matched)) {
                unmatched++;
                System.out.printf(
                        Locale.ROOT,
                        "seed %d, frame %d: not placed (%s, %d catalogue stars)%n",
                        seed,
                        attitudes.size() + 1,
                        tracking ? "tracking" : "standing",
                        frame.truth().starsOfAtlas().size());
                return Optional.empty();
            }
            if (matched.starsMatched() < FEWEST_STARS) {
                tooFewStars++;
                return Optional.empty();
            }
            attitudes.add(matched.attitude(
                    ObservingMoment.of(site, SkyTime.of(frame.truth().middle()), weather), atlas));
        }
        AxisFromFrames axis = AxisFromFrames.of(site, attitudes);
        return Optional.of(new Trial(
                site,
                tracking,
                axis.estimate(),
                axis.offset().minus(wedge.offset()),
                axis.axis().azimuth().minus(wedge.pointing().azimuth()).wrappedSigned(),
                axis.axis().altitude().minus(wedge.pointing().altitude())));
    }

    /** The fork pointed so that three turns reach rich fields at sufficient altitude. */
    private Optional<SimulatedFork> inRichFields(
            SimulatedFork fork, Site site, Weather weather, Instant first, RandomGenerator random) {
        for (int attempt = 0; attempt < 1000; attempt++) {
            double declinationDeg = Math.toDegrees(Math.asin(Draw.between(Math.sin(Math.toRadians(-30)), 1, random)));
            SimulatedFork pointed = fork.pointed(
                    Angle.ofDegrees(Draw.between(-120, 60, random)),
                    Angle.ofDegrees(site.hemisphereSign() * declinationDeg),
                    first);
            boolean rich = true;
            for (int i = 0; rich && i < FRAMES; i++) {
                rich = isRich(pointed.turned(STEP.times(i)), site, weather, first.plus(BETWEEN.multipliedBy(i)));
            }
            if (rich) {
                return Optional.of(pointed);
            }
        }
        return Optional.empty();
    }

    private boolean isRich(SimulatedFork fork, Site site, Weather weather, Instant at) {
        Vector3D front = fork.cameraToEnu(at).applyTo(Vector3D.PLUS_K);
        if (Math.asin(front.getZ()) < LOWEST.radians()) {
            return false;
        }
        Vector3D centre = Directions.lookedAt(front, ObservingMoment.of(site, SkyTime.of(at), weather));
        double pixels = (double) CAMERA.detector().width() * CAMERA.detector().height();
        return atlas.starsWithin(
                                new Angle(centre.getAlpha()).wrappedPositive(),
                                new Angle(centre.getDelta()),
                                CAMERA.scalePerPixel().times(Math.sqrt(pixels / Math.PI)),
                                12)
                        .size()
                >= WANTED_STARS;
    }

    /** What is known just after the fork was set there: the place within 5°, the scale to 5 %. */
    private static MatchHint hint(RenderedFrame frame) {
        Angle within = Angle.ofDegrees(5);
        return new MatchHint(
                Optional.of(new SkyPatch(
                        frame.truth().centre().rightAscension(),
                        frame.truth().centre().declination(),
                        within)),
                ScaleRange.about(frame.truth().scalePerPixel(), 0.05),
                Optional.empty(),
                Knowledge.julianYear(frame.truth().middle()));
    }
}
