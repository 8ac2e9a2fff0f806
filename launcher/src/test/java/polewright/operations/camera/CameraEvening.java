package polewright.operations.camera;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import polewright.image.Frame;
import polewright.image.FrameFacts;
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
import polewright.simulation.fits.FitsFile;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * An evening at an invented site with a small camera on a fork with a known axis offset; its frames are written as
 * files. Seeded: the same frames every time.
 */
public final class CameraEvening {
    public static final Instant EVENING = Instant.parse("2026-11-25T20:00:00Z");
    public static final Site LARKFELL = Site.ofDegrees(54.60, -2.90, 240);
    public static final Site TUSSOCK_FLAT = Site.ofDegrees(-43.95, 170.40, 710);

    /**
     * 640 by 480 pixels of 20.6″: a field of 3.7° by 2.7°, small enough to be fast and wide enough for sufficient
     * stars.
     */
    private static final SimulatedCamera CAMERA = SimulatedCamera.of(
            "Wren 0",
            new CameraOptics(50, 25, 7, 0.05, 0.1, Distortion.radial(0.001), false),
            Detector.ofGuideCamera(640, 480, 5.0, AmpGlow.NONE, new PixelFaults(20_264, 4e-5, 40, 1e-5)));

    private final Site site;
    private final RandomGenerator random;
    private final SimulatedPhotographer photographer;
    private HiddenWedge wedge;
    private SimulatedFork fork;
    private Instant now = EVENING;

    private CameraEvening(Site site, AxisOffset offset, long seed) {
        this.site = site;
        this.random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        Weather weather = Weather.standardAt(site.heightMetres());
        this.photographer = new SimulatedPhotographer(
                new FrameRenderer(StarAtlas.bundled()), CAMERA, site, weather, SkyConditions.COUNTRY);
        this.wedge = HiddenWedge.of(site, Rig.typicalForkOnWedge(), offset, random);
        this.fork = SimulatedFork.on(wedge, TubeOnFork.SQUARE.withCameraRoll(Angle.ofDegrees(33)), EVENING)
                .driven(Drive.TRACKING, EVENING)
                .pointed(Angle.ofDegrees(-40), Angle.ofDegrees(70 * site.hemisphereSign()), EVENING);
    }

    /** Axis 42′ east, 17′ low, tracking. */
    public static CameraEvening atLarkfell() {
        return new CameraEvening(LARKFELL, AxisOffset.ofArcminutes(42, -17), 20_261_125);
    }

    /** The same offset in the south. */
    public static CameraEvening atTussockFlat() {
        return new CameraEvening(TUSSOCK_FLAT, AxisOffset.ofArcminutes(42, -17), 20_261_126);
    }

    public Site site() {
        return site;
    }

    public AxisOffset trueOffset() {
        return wedge.offset();
    }

    public void stopDrive() {
        fork = fork.driven(Drive.STANDING, now);
    }

    public void turnRightAscension(double degrees) {
        fork = fork.turned(Angle.ofDegrees(degrees));
    }

    public void turnScrews(double azimuthTurns, double altitudeTurns) {
        wedge = wedge.turned(azimuthTurns, altitudeTurns, random);
        fork = fork.onWedge(wedge);
    }

    /** Points the mount at an hour angle and declination. */
    public void pointAt(double hourAngleDeg, double declinationDeg) {
        fork = fork.pointed(Angle.ofDegrees(hourAngleDeg), Angle.ofDegrees(declinationDeg), now);
    }

    public void waitSeconds(long seconds) {
        now = now.plusSeconds(seconds);
    }

    /** Takes one two-second frame at the current pointing; the next is taken half a minute later. */
    public RenderedFrame take() {
        RenderedFrame frame = photographer.take(fork, now, Duration.ofSeconds(2), random);
        waitSeconds(30);
        return frame;
    }

    /** The same, written as a FITS file. */
    public Path take(Path file) {
        return write(file, take().frame());
    }

    /** Frames with right ascension turned between them. */
    public List<Path> takeTurning(Path folder, int count, double stepDegrees) {
        return java.util.stream.IntStream.range(0, count)
                .mapToObj(i -> {
                    if (i > 0) {
                        turnRightAscension(stepDegrees);
                    }
                    return take(folder.resolve("turn" + (i + 1) + ".fits"));
                })
                .toList();
    }

    public static Path write(Path file, Frame frame) {
        return write(file, FitsFile.of(frame));
    }

    public static Path write(Path file, byte[] content) {
        try {
            return Files.write(file, content);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The same pixels with different header data. */
    public static Frame with(Frame frame, FrameFacts facts) {
        return new Frame(frame.width(), frame.height(), frame.pixels(), frame.saturation(), facts);
    }

    /** The same data without a time. */
    public static FrameFacts timeless(FrameFacts facts) {
        return new FrameFacts(
                Optional.empty(),
                Optional.empty(),
                facts.exposure(),
                facts.focalLengthMm(),
                facts.pixelMicrons(),
                facts.camera());
    }
}
