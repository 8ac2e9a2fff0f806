package polewright.bench;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.fix.AxisState;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Rig;
import polewright.simulation.CameraOnTube;
import polewright.simulation.DrawnSky;
import polewright.simulation.HiddenWedge;
import polewright.simulation.RehearsedNight;
import polewright.simulation.camera.CameraOptics;
import polewright.simulation.camera.Detector;
import polewright.simulation.camera.SimulatedCamera;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStar;
import polewright.sky.atlas.NamedStars;
import polewright.sky.place.Site;

/** A night at a random site, date and offset, all from one seed. */
final class RandomNight {
    private static final List<NamedStar> STARS = NamedStars.bundled().all();
    private static final Instant FIRST_DAY = Instant.parse("2026-01-01T00:00:00Z");
    private static final double LARGEST_OFFSET_DEG = 15;

    private RandomNight() {}

    static RandomGenerator random(long seed) {
        return RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
    }

    /** Offsets distributed like the fix's prior, up to 15°. */
    static List<RehearsedNight.Moment> anyOffset(long seed) {
        RandomGenerator random = random(seed);
        double sigma = AxisState.PRIOR_SIGMA.degrees();
        double east;
        double up;
        do {
            east = sigma * random.nextGaussian();
            up = sigma * random.nextGaussian();
        } while (Math.hypot(east, up) > LARGEST_OFFSET_DEG);
        return play(seed, new AxisOffset(Angle.ofDegrees(east), Angle.ofDegrees(up)), random);
    }

    /** This far from the pole, in any direction. */
    static List<RehearsedNight.Moment> offsetOf(Angle distance, long seed) {
        RandomGenerator random = random(seed);
        double direction = 2 * Math.PI * random.nextDouble();
        return play(
                seed, new AxisOffset(distance.times(Math.sin(direction)), distance.times(Math.cos(direction))), random);
    }

    /** This far from the pole, with a small camera in the home position, whose frames are rendered and matched. */
    static List<RehearsedNight.Moment> byFrames(Angle distance, long seed, DrawnSky sky) {
        RandomGenerator random = random(seed);
        double direction = 2 * Math.PI * random.nextDouble();
        SimulatedCamera camera =
                SimulatedCamera.of("small", CameraOptics.clean(100, 40, 7), Detector.flawless(480, 360, 6));
        RehearsedNight.Setting setting = setting(
                seed,
                Rig.typicalForkOnWedge().withCameras(List.of(camera.inRig("guide camera"))),
                new AxisOffset(distance.times(Math.sin(direction)), distance.times(Math.cos(direction))),
                random);
        CameraOnTube onTube = CameraOnTube.ofDrawnFrames(camera, sky, setting, random, photograph -> {});
        return RehearsedNight.play(setting, Optional.of(onTube), moment -> {}, random);
    }

    /**
     * This far from the pole, on a wedge whose screws have either sense with equal probability and differ by a
     * quarter (1 sigma) from the rig's nominal effect, which is only assumed.
     */
    static List<RehearsedNight.Moment> sensesEven(Angle distance, long seed) {
        return sensesEven(distance, seed, Rig.typicalForkOnWedge());
    }

    /** The same with a small camera on the tube, with attitudes of the usual accuracy. */
    static List<RehearsedNight.Moment> sensesEvenByFrames(Angle distance, long seed) {
        return sensesEven(
                distance,
                seed,
                Rig.typicalForkOnWedge().withCameras(List.of(new Camera("guide camera", 100, 6, 480, 360))));
    }

    private static List<RehearsedNight.Moment> sensesEven(Angle distance, long seed, Rig rig) {
        RandomGenerator random = random(seed);
        double direction = 2 * Math.PI * random.nextDouble();
        RehearsedNight.Setting usual = setting(
                seed,
                rig,
                new AxisOffset(distance.times(Math.sin(direction)), distance.times(Math.cos(direction))),
                random);
        HiddenWedge wedge = usual.wedge();
        HiddenWedge real = new HiddenWedge(
                wedge.site(),
                wedge.rig(),
                wedge.axis(),
                wedge.azimuthAxis(),
                factor(random),
                factor(random),
                wedge.azimuthBacklash(),
                wedge.altitudeBacklash());
        RehearsedNight.Setting setting = new RehearsedNight.Setting(
                usual.siteName(), real, usual.allowance(), usual.from(), usual.stars(), usual.before());
        return RehearsedNight.play(setting, Optional.empty(), moment -> {}, random);
    }

    private static double factor(RandomGenerator random) {
        double size = Math.max(0.3, 1 + 0.25 * random.nextGaussian());
        return random.nextBoolean() ? size : -size;
    }

    private static List<RehearsedNight.Moment> play(long seed, AxisOffset offset, RandomGenerator random) {
        return RehearsedNight.play(
                setting(seed, Rig.typicalForkOnWedge(), offset, random), Optional.empty(), moment -> {}, random);
    }

    private static RehearsedNight.Setting setting(long seed, Rig rig, AxisOffset offset, RandomGenerator random) {
        int hemisphere = seed % 2 == 0 ? 1 : -1;
        double latitudeDeg = hemisphere * (20 + 45 * random.nextDouble());
        double longitudeDeg = -180 + 360 * random.nextDouble();
        Site site = Site.ofDegrees(latitudeDeg, longitudeDeg, 2000 * random.nextDouble());
        // About nine in the evening by the Sun, on a random day.
        double hours = 24 * Math.floor(365 * random.nextDouble()) + 21 - longitudeDeg / 15;
        Instant from = FIRST_DAY.plusSeconds(Math.round(hours * 3600));
        HiddenWedge wedge = HiddenWedge.of(site, rig, offset, random);
        return new RehearsedNight.Setting("random", wedge, DiscAllowance.VISUAL, from, STARS, List.of());
    }
}
