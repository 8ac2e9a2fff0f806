package polewright.bench.frames;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.mount.AxisPointing;
import polewright.simulation.camera.CameraAim;
import polewright.simulation.camera.CameraPath;
import polewright.simulation.camera.Exposure;
import polewright.simulation.camera.FrameRenderer;
import polewright.simulation.camera.SimulatedCamera;
import polewright.simulation.camera.SkyConditions;
import polewright.simulation.fits.FitsFile;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/**
 * The timed files, rendered and written by a separate process: a 24-megapixel frame by a telescope of two metres and
 * one by a short telescope, and a 2-megapixel guide frame, all within 10° of the north pole where there are enough
 * stars; and a guide frame of another part of the sky.
 */
public final class TimedFrames {
    static final String LONG_TELESCOPE = "24-megapixels-2050-mm.fits";
    static final String SHORT_TELESCOPE = "24-megapixels-500-mm.fits";
    static final String GUIDE_NEAR_POLE = "guide-near-pole.fits";
    static final String GUIDE_ELSEWHERE = "guide-elsewhere.fits";

    static final Site SITE = Site.ofDegrees(54.60, -2.90, 240);

    private static final Instant AT = Instant.parse("2026-11-25T20:00:00Z");
    private static final Duration LENGTH = Duration.ofSeconds(4);
    private static final double FAINTEST_INVENTED = 17;
    private static final int LEAST_STARS = 20;
    private static final double SHORT_FOCAL_MM = 500;

    private final StarAtlas atlas = StarAtlas.bundled();
    private final FrameRenderer renderer =
            new FrameRenderer(StrayedSky.ofAtlas()).withInventedStarsTo(FAINTEST_INVENTED);
    private final Path folder;

    private TimedFrames(Path folder) {
        this.folder = folder;
    }

    public static void main(String[] args) throws IOException {
        TimedFrames frames = new TimedFrames(Path.of(args[0]));
        SimulatedCamera longTelescope = SimulatedCamera.mainTubeCamera();
        SimulatedCamera shortTelescope =
                longTelescope.with(longTelescope.optics().withFocalLength(SHORT_FOCAL_MM));
        Angle nearPole = Angle.ofDegrees(9);
        frames.write(LONG_TELESCOPE, longTelescope, Vector3D.PLUS_K, nearPole, 1);
        frames.write(SHORT_TELESCOPE, shortTelescope, Vector3D.PLUS_K, nearPole, 2);
        frames.write(GUIDE_NEAR_POLE, SimulatedCamera.guideCamera(), Vector3D.PLUS_K, nearPole, 3);
        Vector3D high = Directions.lookedAt(Vector3D.PLUS_K, frames.moment());
        frames.write(GUIDE_ELSEWHERE, SimulatedCamera.guideCamera(), high, Angle.ofDegrees(40), 4);
    }

    private ObservingMoment moment() {
        return ObservingMoment.of(SITE, SkyTime.of(AT), Weather.standardAt(SITE.heightMetres()));
    }

    private void write(String name, SimulatedCamera camera, Vector3D around, Angle within, long seed)
            throws IOException {
        RandomGenerator random = new SplittableRandom(seed);
        ObservingMoment moment = moment();
        CatalogueStar place = richPlace(camera, around, within, random);
        Exposure exposure = new Exposure(
                camera,
                CameraPath.tracking(
                        CameraAim.at(place, new Angle(2 * Math.PI * random.nextDouble()), moment),
                        AxisPointing.atPole(SITE).northernEnd(SITE)),
                SITE,
                Weather.standardAt(SITE.heightMetres()),
                SkyConditions.COUNTRY,
                AT,
                LENGTH);
        Files.write(
                folder.resolve(name),
                FitsFile.of(renderer.render(exposure, random).frame()));
    }

    /** The first of random places whose picture has enough stars of the atlas. */
    private CatalogueStar richPlace(SimulatedCamera camera, Vector3D around, Angle within, RandomGenerator random) {
        double pixels = camera.detector().pixels();
        Angle radius = camera.scalePerPixel().times(Math.sqrt(pixels / Math.PI));
        while (true) {
            Vector3D direction = Directions.within(around, within, random);
            Angle rightAscension = new Angle(direction.getAlpha()).wrappedPositive();
            Angle declination = new Angle(direction.getDelta());
            if (atlas.starsWithin(rightAscension, declination, radius, 12).size() >= LEAST_STARS) {
                return CatalogueStar.fixed(rightAscension, declination);
            }
        }
    }
}
