package polewright.bench.frames;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.image.match.MatchHint;
import polewright.mount.AxisPointing;
import polewright.simulation.camera.CameraAim;
import polewright.simulation.camera.CameraPath;
import polewright.simulation.camera.CloudBank;
import polewright.simulation.camera.Exposure;
import polewright.simulation.camera.FrameRenderer;
import polewright.simulation.camera.RenderedFrame;
import polewright.simulation.camera.SatelliteTrail;
import polewright.simulation.camera.SkyConditions;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/**
 * A frame of anywhere in the sky, from anywhere on Earth, by any camera: all from one seed.
 *
 * <p>Fields are 0.5° to 40° wide, uniform in the logarithm. A tenth of the mounts have the drive off. Places are
 * uniform over the sky, and drawn again, with another exposure, until {@link #FEWEST_STARS} stars of the atlas exceed
 * {@link #SIGNAL_TO_NOISE}: narrow fields are therefore mostly in the Milky Way.
 *
 * @param seed that it came from
 * @param exposure how it was taken
 * @param rendered the picture and its true values
 * @param knowledge what is known about it: each kind in turn by the seed
 * @param hint the same, for the matcher
 * @param standing whether the drive was off
 */
record RandomFrame(
        long seed, Exposure exposure, RenderedFrame rendered, Knowledge knowledge, MatchHint hint, boolean standing) {
    static final int FEWEST_STARS = 15;
    static final double SIGNAL_TO_NOISE = 8;

    private static final double FAINTEST_INVENTED = 16;
    private static final Instant FIRST_DAY = Instant.parse("2026-01-01T00:00:00Z");
    private static final double SIDEREAL_ARCSEC_PER_SECOND = 15.041;
    private static final double MOST_SKY_OF_FULL = 0.3;
    private static final int MOST_PLACES = 5000;

    /** With a clear sky. */
    static RandomFrame of(StarAtlas sky, long seed) {
        return of(sky, seed, Setting.CLEAR);
    }

    /** What is between camera and sky. */
    enum Setting {
        CLEAR,
        /** Opaque cloud over half of the picture; the stars are counted without it. */
        CLOUD_OVER_HALF
    }

    static RandomFrame of(StarAtlas sky, long seed, Setting setting) {
        RandomGenerator random = new SplittableRandom(seed);
        FrameRenderer renderer = new FrameRenderer(sky).withInventedStarsTo(FAINTEST_INVENTED);
        Knowledge knowledge = Knowledge.bySeed(seed);
        boolean standing = random.nextInt(10) == 0;
        RandomCamera camera = RandomCamera.ofWidth(Angle.ofDegrees(Draw.logBetween(0.5, 40, random)), random);
        for (int place = 0; place < MOST_PLACES; place++) {
            Exposure exposure = exposure(camera, standing, random);
            if (!isWorthRendering(sky, exposure)) {
                continue;
            }
            SplittableRandom noise = new SplittableRandom(random.nextLong());
            RenderedFrame rendered = renderer.render(exposure, noise);
            if (StarTruth.of(exposure, rendered.truth()).standingOut(SIGNAL_TO_NOISE) < FEWEST_STARS) {
                continue;
            }
            if (setting == Setting.CLOUD_OVER_HALF) {
                exposure = clouded(exposure, CloudBank.overHalf(2 * Math.PI * random.nextDouble()));
                rendered = renderer.render(exposure, noise);
            }
            return new RandomFrame(
                    seed, exposure, rendered, knowledge, knowledge.hint(rendered.truth(), random), standing);
        }
        throw new IllegalStateException("seed " + seed + ": no place with so many stars was found");
    }

    /** Width of the picture on the sky. */
    Angle width() {
        double halfMm = exposure.camera().detector().width()
                * exposure.camera().detector().pixelMicrons()
                / 2000;
        return new Angle(2 * Math.atan(halfMm / exposure.camera().optics().focalLengthMm()));
    }

    StarTruth stars() {
        return StarTruth.of(exposure, rendered.truth());
    }

    private static Exposure exposure(RandomCamera camera, boolean standing, RandomGenerator random) {
        int hemisphere = random.nextBoolean() ? 1 : -1;
        Site site = Site.ofDegrees(hemisphere * 60 * random.nextDouble(), Draw.between(-180, 180, random), 300);
        Weather weather = Weather.standardAt(300);
        Instant middle = FIRST_DAY.plusMillis((long) (365.0 * 86_400_000 * random.nextDouble()));
        ObservingMoment moment = ObservingMoment.of(site, SkyTime.of(middle), weather);
        Rotation aim = aim(camera, moment, random);
        double magnitudePerArcsec2 = Draw.between(18, 21.7, random);
        double seconds = standing
                ? Draw.logBetween(3, 30, random)
                        * camera.camera().scalePerPixel().arcseconds()
                        / SIDEREAL_ARCSEC_PER_SECOND
                : Draw.logBetween(0.3, 20, random);
        double full = Math.min(
                camera.camera().detector().fullWellElectrons(),
                camera.camera().detector().fullCount()
                        * camera.camera().detector().electronsPerCount());
        seconds = Math.min(
                Math.min(30, seconds), MOST_SKY_OF_FULL * full / camera.skyElectronsPerSecond(magnitudePerArcsec2));
        SkyConditions conditions = new SkyConditions(
                camera.seeing(),
                magnitudePerArcsec2,
                Draw.between(0, 0.2, random),
                2 * Math.PI * random.nextDouble(),
                Draw.between(0.15, 0.4, random),
                Optional.empty(),
                satellites(camera, random));
        CameraPath path = standing
                ? CameraPath.standing(aim)
                : CameraPath.tracking(aim, AxisPointing.atPole(site).northernEnd(site));
        return new Exposure(
                camera.camera(), path, site, weather, conditions, middle, Duration.ofNanos(Math.round(seconds * 1e9)));
    }

    /** Uniform over the part of the sky well above the horizon, with a random roll. */
    private static Rotation aim(RandomCamera camera, ObservingMoment moment, RandomGenerator random) {
        double halfDiagonalDeg = Math.toDegrees(
                Math.atan(cornerPixels(camera) * camera.camera().scalePerPixel().radians()));
        Angle lowest = Angle.ofDegrees(Math.max(20, halfDiagonalDeg + 8));
        while (true) {
            Vector3D direction = Directions.within(Vector3D.PLUS_K, Angle.HALF_TURN, random);
            CatalogueStar place = CatalogueStar.fixed(new Angle(direction.getAlpha()), new Angle(direction.getDelta()));
            if (moment.refracted(moment.apparent(place)).altitude().compareTo(lowest) > 0) {
                return CameraAim.at(place, new Angle(2 * Math.PI * random.nextDouble()), moment);
            }
        }
    }

    private static double cornerPixels(RandomCamera camera) {
        return Math.hypot(
                        camera.camera().detector().width(),
                        camera.camera().detector().height())
                / 2;
    }

    private static List<SatelliteTrail> satellites(RandomCamera camera, RandomGenerator random) {
        int count = random.nextInt(100) < 15 ? 1 + random.nextInt(2) : 0;
        return Stream.generate(
                        () -> SatelliteTrail.across(camera.camera(), Draw.logBetween(300, 10_000, random), random))
                .limit(count)
                .toList();
    }

    /** Whether rendering is worthwhile: by the atlas alone, in a disc of the picture's area. */
    private static boolean isWorthRendering(StarAtlas sky, Exposure exposure) {
        Pixels pixels = Pixels.of(exposure);
        double seconds = exposure.length().toNanos() / 1e9;
        double trail = exposure.path()
                                .cameraToEnu(-seconds / 2)
                                .applyTo(
                                        exposure.path().cameraToEnu(seconds / 2).revert())
                                .getAngle()
                        < 1e-12
                ? SIDEREAL_ARCSEC_PER_SECOND
                        * seconds
                        / exposure.camera().scalePerPixel().arcseconds()
                : 0;
        double faintest = StarTruth.faintestMagnitude(exposure, pixels, trail, SIGNAL_TO_NOISE);
        int columns = exposure.camera().detector().width();
        int rows = exposure.camera().detector().height();
        Angle radius = exposure.camera().scalePerPixel().times(Math.sqrt(columns * (double) rows / Math.PI));
        Vector3D front = exposure.path().cameraToEnu(0).applyTo(Vector3D.PLUS_K);
        ObservingMoment moment = ObservingMoment.of(exposure.site(), SkyTime.of(exposure.middle()), exposure.weather());
        Vector3D centre = Directions.lookedAt(front, moment);
        return sky.starsWithin(
                                new Angle(centre.getAlpha()).wrappedPositive(),
                                new Angle(centre.getDelta()),
                                radius,
                                faintest)
                        .size()
                >= 0.8 * FEWEST_STARS;
    }

    private static Exposure clouded(Exposure clear, CloudBank bank) {
        return new Exposure(
                clear.camera(),
                clear.path(),
                clear.site(),
                clear.weather(),
                clear.sky().with(bank),
                clear.middle(),
                clear.length());
    }
}
