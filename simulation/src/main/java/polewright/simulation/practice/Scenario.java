package polewright.simulation.practice;

import java.time.Instant;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.sighting.TurnedFrames;
import polewright.alignment.work.Work;
import polewright.alignment.work.WorkPreset;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Rig;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.simulation.HiddenWedge;
import polewright.simulation.TubeOnFork;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * The starting conditions of a practice night.
 *
 * @param siteName the site's name in the log
 * @param rig with its screws and optics; a camera in it is {@link PracticeCamera}'s
 * @param from when the night begins
 * @param seed of everything that is hidden
 * @param work what the night is for
 */
public record Scenario(String siteName, Site site, Rig rig, Instant from, long seed, Work work) {
    // The accuracy of setting up with compass, eye and a wedge's scale (common practice), or a little worse.
    private static final double LEAST_OFFSET_DEG = 1.5;
    private static final double SPREAD_OFFSET_DEG = 2.5;
    private static final Angle MISALIGNMENT = Angle.ofArcminutes(12);
    private static final int WEDGE_STREAM = 0;
    private static final int TUBE_STREAM = 1;
    private static final int FIRST_ACTION_STREAM = 2;
    // Spreads neighbouring seeds, which would give similar nights: an odd number with well-mixed bits (the golden
    // ratio).
    private static final long SEED_STEP = 0x9E3779B97F4A7C15L;

    /** A visual scenario. */
    public static Scenario byEye(String siteName, Site site, Rig rig, Instant from, long seed) {
        Rig visual = rig.withCameras(List.of());
        return new Scenario(
                siteName,
                site,
                visual,
                from,
                seed,
                new Work(List.of(WorkPreset.CASUAL_LOOK.with(visual), WorkPreset.PLANETS.with(visual))));
    }

    /** The same with a small camera on the tube; the work is still visual. */
    public static Scenario withCamera(String siteName, Site site, Rig rig, Instant from, long seed) {
        Rig withCamera = rig.withCameras(List.of(PracticeCamera.CAMERA.inRig("practice camera")));
        return new Scenario(
                siteName,
                site,
                withCamera,
                from,
                seed,
                new Work(List.of(WorkPreset.CASUAL_LOOK.with(withCamera), WorkPreset.PLANETS.with(withCamera))));
    }

    public boolean hasCamera() {
        return !rig.cameras().isEmpty();
    }

    /** The usual air over the site. */
    public Weather weather() {
        return Weather.standardAt(site.heightMetres());
    }

    /** The events with which the practice's own log begins. */
    public List<LoggedEvent> firstEvents() {
        return List.of(
                new LoggedEvent(1, from, new NightEvent.Begun(siteName, site, weather(), rig, DiscAllowance.VISUAL)),
                new LoggedEvent(2, from, new NightEvent.WorkSet(work)));
    }

    /** The initial state of the wedge. */
    HiddenWedge hiddenWedge() {
        RandomGenerator random = random(WEDGE_STREAM);
        double direction = 2 * Math.PI * random.nextDouble();
        Angle distance = Angle.ofDegrees(LEAST_OFFSET_DEG + SPREAD_OFFSET_DEG * random.nextDouble());
        AxisOffset offset = new AxisOffset(distance.times(Math.sin(direction)), distance.times(Math.cos(direction)));
        return HiddenWedge.of(site, rig, offset, random);
    }

    /** How tube and camera are mounted, with typical misalignments. */
    TubeOnFork tube() {
        RandomGenerator random = random(TUBE_STREAM);
        return new TubeOnFork(
                MISALIGNMENT.times(random.nextGaussian()),
                MISALIGNMENT.times(random.nextGaussian()),
                Angle.ofDegrees(360 * random.nextDouble()),
                TurnedFrames.MOUNT_FLEXURE.times(Math.abs(random.nextGaussian())));
    }

    /** The random numbers of one action, counted from 0. */
    RandomGenerator randomOfAction(int index) {
        return random(FIRST_ACTION_STREAM + index);
    }

    private RandomGenerator random(int which) {
        // Named, so that a seed gives the same night on every machine.
        return RandomGeneratorFactory.<RandomGenerator>of("L64X128MixRandom").create(SEED_STEP * (seed + 1) + which);
    }
}
