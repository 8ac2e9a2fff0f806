package polewright.bench.frames;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Rig;
import polewright.simulation.HiddenWedge;
import polewright.simulation.SimulatedFork;
import polewright.simulation.SimulatedPhotographer;
import polewright.simulation.TubeOnFork;
import polewright.simulation.camera.FrameRenderer;
import polewright.simulation.camera.SimulatedCamera;
import polewright.simulation.camera.SkyConditions;
import polewright.simulation.fits.FitsFile;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** The frames of a guide camera of 2 megapixels while an axis is found and set, near the pole. */
public final class GuideEvening {
    private static final Site SITE = TimedFrames.SITE;
    private static final Instant EVENING = Instant.parse("2026-11-25T20:00:00Z");

    private GuideEvening() {}

    /** FITS files: two places in right ascension, then the screws, a little at a time. */
    public static List<byte[]> rendered(int count) {
        RandomGenerator random = new SplittableRandom(20_261_125);
        SimulatedPhotographer photographer = new SimulatedPhotographer(
                new FrameRenderer(StrayedSky.ofAtlas()).withInventedStarsTo(17),
                SimulatedCamera.guideCamera(),
                SITE,
                Weather.standardAt(SITE.heightMetres()),
                SkyConditions.COUNTRY);
        HiddenWedge wedge = HiddenWedge.of(SITE, Rig.typicalForkOnWedge(), AxisOffset.ofArcminutes(42, -17), random);
        SimulatedFork fork = SimulatedFork.on(wedge, TubeOnFork.SQUARE.withCameraRoll(Angle.ofDegrees(33)), EVENING)
                .driven(polewright.simulation.Drive.TRACKING, EVENING)
                .pointed(Angle.ofDegrees(-40), Angle.ofDegrees(86), EVENING);
        List<byte[]> frames = new ArrayList<>();
        Instant now = EVENING;
        for (int i = 0; i < count; i++) {
            if (i == 1) {
                fork = fork.turned(Angle.ofDegrees(45));
            } else if (i > 1) {
                wedge = wedge.turned(-0.02, 0.01, random);
                fork = fork.onWedge(wedge);
            }
            frames.add(FitsFile.of(
                    photographer.take(fork, now, Duration.ofSeconds(2), random).frame()));
            now = now.plusSeconds(5);
        }
        return frames;
    }
}
