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
 * What a practice night starts from.
 *
 * @param siteName what the site is called in the log
 * @param rig with its screws and optics; a camera in it is {@link PracticeCamera}'s
 * @param from when the night begins
 * @param seed of everything that is hidden
 * @param work what the night is for
 */
public record Scenario(String siteName, Site site, Rig rig, Instant from, long seed, Work work) {
    // As well as compass, eye and a wedge's scale leave it (common practice), or a little worse.
    private static final double LEAST_OFFSET_DEG = 1.5;
    private static final double SPREAD_OFFSET_DEG = 2.5;
    private static final Angle NOT_SQUARE_BY = Angle.ofArcminutes(12);
    private static final int WEDGE_DICE = 0;
    private static final int TUBE_DICE = 1;
    private static final int FIRST_DEED_DICE = 2;
    // Neighbouring seeds would make like nights: an odd number with its ones and zeros well mixed (the golden ratio).
    private static final long SEED_STEP = 0x9E3779B97F4A7C15L;

    /** For looking by eye. */
    public static Scenario byEye(String siteName, Site site, Rig rig, Instant from, long seed) {
        Rig eyes = rig.withCameras(List.of());
        return new Scenario(
                siteName,
                site,
                eyes,
                from,
                seed,
                new Work(List.of(WorkPreset.CASUAL_LOOK.with(eyes), WorkPreset.PLANETS.with(eyes))));
    }

    /** The same with a small camera on the tube; the work is still to look. */
    public static Scenario withCamera(String siteName, Site site, Rig rig, Instant from, long seed) {
        Rig armed = rig.withCameras(List.of(PracticeCamera.CAMERA.inRig("practice camera")));
        return new Scenario(
                siteName,
                site,
                armed,
                from,
                seed,
                new Work(List.of(WorkPreset.CASUAL_LOOK.with(armed), WorkPreset.PLANETS.with(armed))));
    }

    public boolean hasCamera() {
        return !rig.cameras().isEmpty();
    }

    /** The air over the site, as it usually is. */
    public Weather weather() {
        return Weather.standardAt(site.heightMetres());
    }

    /** The events with which the practice's own log begins. */
    public List<LoggedEvent> firstEvents() {
        return List.of(
                new LoggedEvent(1, from, new NightEvent.Begun(siteName, site, weather(), rig, DiscAllowance.VISUAL)),
                new LoggedEvent(2, from, new NightEvent.WorkSet(work)));
    }

    /** The wedge as it stands at first. */
    HiddenWedge hiddenWedge() {
        RandomGenerator random = dice(WEDGE_DICE);
        double direction = 2 * Math.PI * random.nextDouble();
        Angle distance = Angle.ofDegrees(LEAST_OFFSET_DEG + SPREAD_OFFSET_DEG * random.nextDouble());
        AxisOffset hidden = new AxisOffset(distance.times(Math.sin(direction)), distance.times(Math.cos(direction)));
        return HiddenWedge.of(site, rig, hidden, random);
    }

    /** How tube and camera sit, no squarer than tubes are. */
    TubeOnFork tube() {
        RandomGenerator random = dice(TUBE_DICE);
        return new TubeOnFork(
                NOT_SQUARE_BY.times(random.nextGaussian()),
                NOT_SQUARE_BY.times(random.nextGaussian()),
                Angle.ofDegrees(360 * random.nextDouble()),
                TurnedFrames.MOUNTS_OWN_GIVE.times(Math.abs(random.nextGaussian())));
    }

    /** The dice of one deed, counted from 0. */
    RandomGenerator diceOfDeed(int index) {
        return dice(FIRST_DEED_DICE + index);
    }

    private RandomGenerator dice(int which) {
        // Named, so that a seed makes the same night on every machine.
        return RandomGeneratorFactory.<RandomGenerator>of("L64X128MixRandom").create(SEED_STEP * (seed + 1) + which);
    }
}
