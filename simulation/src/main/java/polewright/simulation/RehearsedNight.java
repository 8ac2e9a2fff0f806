package polewright.simulation;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.random.RandomGenerator;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.AdvisedStar;
import polewright.alignment.advice.ScrewTurn;
import polewright.alignment.advice.SightingKind;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.camera.Drive;
import polewright.alignment.sighting.BodyBearing;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.StarDrift;
import polewright.alignment.sighting.TurnedFrames;
import polewright.alignment.work.Work;
import polewright.mount.rig.HandTurns;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStar;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.Weather;

/**
 * A night at a {@link HiddenWedge}, played by someone who does as the advice says until it says stop.
 *
 * <p>The advice sees the events only, never the wedge.
 */
public final class RehearsedNight {
    private static final int MOST_EVENTS = 60;
    // Half-way between pole and equator, where the roll of a frame counts as much as its centre.
    private static final Angle USUAL_POLAR_DISTANCE = Angle.ofDegrees(45);

    private final NightEvent.Begun begun;
    private final List<NamedStar> stars;
    private final SimulatedObserver observer;
    private final Optional<CameraOnTube> camera;
    private final ActionCosts costs;
    private final Optional<Work> work;
    private final Consumer<Moment> told;
    private final NightState.ModelCache models = new NightState.ModelCache();
    private final List<LoggedEvent> events = new ArrayList<>();
    private final List<Moment> moments = new ArrayList<>();
    private HiddenWedge wedge;
    private Instant now;
    // Sightings yet to be taken before advice is asked for.
    private int unasked;
    // The frames that told the axis last, while nothing but screws was touched since.
    private Optional<CameraOnTube.Turned> reference = Optional.empty();
    // The last one after screws were turned or clamps touched.
    private Optional<CameraAttitude> lastFrame = Optional.empty();
    // Whether clamps or screws have been touched since the last frame: then one more tells where the axis has gone.
    private boolean touchedSinceFrame;

    /**
     * The night after one event.
     *
     * @param wedge how the wedge really stands then
     * @param look the frame taken after the event, if that was a turn by frames
     * @param isAdviceFollowed whether what comes next is what the night advises; not where more was to be logged first
     */
    public record Moment(
            LoggedEvent event,
            NightState night,
            HiddenWedge wedge,
            Optional<FrameWhileTurning> look,
            boolean isAdviceFollowed) {}

    /**
     * What a night is played with.
     *
     * @param siteName what the site is called in the log
     * @param wedge how the wedge stands at first
     * @param allowance what is tolerated, if there is no work
     * @param work what the night is for, told before anything else; then it says what is tolerated
     * @param costs how long everything takes
     * @param from when the night begins
     * @param stars to choose from
     * @param before sightings to take before any advice is asked for
     */
    public record Setting(
            String siteName,
            HiddenWedge wedge,
            DiscAllowance allowance,
            Optional<Work> work,
            ActionCosts costs,
            Instant from,
            List<NamedStar> stars,
            List<SightingKind> before) {
        public Setting {
            stars = List.copyOf(stars);
            before = List.copyOf(before);
        }

        /** Without work, and everything takes as long as usual. */
        public Setting(
                String siteName,
                HiddenWedge wedge,
                DiscAllowance allowance,
                Instant from,
                List<NamedStar> stars,
                List<SightingKind> before) {
            this(siteName, wedge, allowance, Optional.empty(), ActionCosts.USUAL, from, stars, before);
        }

        /** The air over the site, as it usually is. */
        public Weather weather() {
            return Weather.standardAt(wedge.site().heightMetres());
        }
    }

    private RehearsedNight(
            Setting setting, Optional<CameraOnTube> camera, Consumer<Moment> told, RandomGenerator random) {
        this.begun = new NightEvent.Begun(
                setting.siteName(),
                setting.wedge().site(),
                setting.weather(),
                setting.wedge().rig(),
                setting.allowance());
        this.wedge = setting.wedge();
        this.now = setting.from();
        this.stars = setting.stars();
        this.observer = new SimulatedObserver(begun.weather(), random);
        this.camera = camera.or(this::cameraOfTheRig);
        this.costs = setting.costs();
        this.work = setting.work();
        this.told = told;
    }

    /** The rig's own, its frames as good as they usually are, without a pixel drawn. */
    private Optional<CameraOnTube> cameraOfTheRig() {
        return begun.rig()
                .bestCamera()
                .map(c -> new CameraOnTube(
                        (fork, at) -> observer.attitude(fork, at, c), TubeOnFork.SQUARE, USUAL_POLAR_DISTANCE));
    }

    /**
     * Plays from bare ground to stop.
     *
     * @param siteName what the site is called in the log
     * @param wedge how the wedge stands at first
     * @param from when the night begins
     * @param stars to choose from
     * @return every event with what was known and what was true after it; the last advice is to stop, unless 60 events
     *     did not suffice
     */
    public static List<Moment> play(
            String siteName,
            HiddenWedge wedge,
            DiscAllowance allowance,
            Instant from,
            List<NamedStar> stars,
            RandomGenerator random) {
        Setting setting = new Setting(siteName, wedge, allowance, from, stars, List.of());
        return new RehearsedNight(setting, Optional.empty(), moment -> {}, random).played(setting.before());
    }

    /**
     * The same with a camera of one's own on the tube.
     *
     * @param camera takes the place of the rig's, which the advice reckons with
     * @param told is shown each moment as soon as it has come about
     */
    public static List<Moment> play(
            Setting setting, Optional<CameraOnTube> camera, Consumer<Moment> told, RandomGenerator random) {
        return new RehearsedNight(setting, camera, told, random).played(setting.before());
    }

    private List<Moment> played(List<SightingKind> before) {
        unasked = before.size() + (work.isPresent() ? 1 : 0);
        happened(begun);
        work.ifPresent(set -> {
            unasked--;
            happened(new NightEvent.WorkSet(set));
        });
        for (SightingKind kind : before) {
            unasked--;
            sight(kind, Duration.ZERO, Optional.empty());
        }
        while (moments.size() < MOST_EVENTS && !(advice() instanceof Advice.Stop)) {
            follow(advice());
        }
        return List.copyOf(moments);
    }

    private NightState night() {
        return moments.get(moments.size() - 1).night();
    }

    private Advice advice() {
        return night().advice();
    }

    private void follow(Advice advice) {
        if (advice instanceof Advice.TakeSighting take) {
            sight(take.kind(), take.watch(), take.star());
        } else if (advice instanceof Advice.TurnScrews turn) {
            turn(turn);
        } else if (advice instanceof Advice.WaitForDark) {
            now = now.plus(Duration.ofHours(1));
            happened(new NightEvent.Noted("waited for dark"));
        } else if (advice instanceof Advice.MoveByHand move) {
            wedge = wedge.moved(move.azimuth(), move.altitude(), observer.random());
            now = now.plus(costs.movingByHand());
            reference = Optional.empty();
            happened(new NightEvent.Knocked());
        } else if (advice instanceof Advice.Clamp) {
            wedge = wedge.clamped(observer.random());
            now = now.plus(costs.clamping());
            touchedSinceFrame = true;
            happened(new NightEvent.Clamped());
        } else {
            throw new IllegalStateException("cannot follow " + advice);
        }
    }

    private void sight(SightingKind kind, Duration watch, Optional<AdvisedStar> advised) {
        switch (kind) {
            case COMPASS -> sighted(observer.compass(wedge, now, CompassBearing.USUAL_SIGMA), costs.reading());
            case LEVEL_AND_SCALE -> sighted(observer.scale(wedge, now, LevelledScale.USUAL_SIGMA), costs.reading());
            case SHADOW ->
                sighted(
                        observer.bearing(
                                wedge, now, SolarSystemBody.SUN, BodyBearing.Line.SHADOW, BodyBearing.USUAL_SIGMA),
                        costs.reading());
            case STILL_POINT ->
                sighted(
                        observer.stillPoint(
                                wedge,
                                now,
                                star(kind, advised),
                                begun.rig().widestOptic().orElseThrow()),
                        costs.stillPoint());
            case FRAMES -> takeFrames(camera.orElseThrow());
            case DRIFT_ON_MERIDIAN, DRIFT_EAST_OR_WEST ->
                sighted(
                        observer.drift(wedge, now, star(kind, advised), watch, StarDrift.usualSigma(begun.rig())),
                        watch.plus(costs.settingAStar()));
        }
    }

    private void takeFrames(CameraOnTube onTube) {
        if (reference.isPresent() && touchedSinceFrame) {
            now = now.plus(costs.look());
            oneMore(reference.get(), onTube.again(reference.get().fork(), wedge, now));
            return;
        }
        now = now.plus(costs.pointing());
        CameraOnTube.Turned turned = onTube.turned(wedge, now);
        reference = Optional.of(turned);
        lastFrame = Optional.empty();
        touchedSinceFrame = false;
        sighted(TurnedFrames.of(turned.attitudes(), Drive.STANDING), CameraOnTube.TAKES);
    }

    private void turn(Advice.TurnScrews advice) {
        if (advice.loosenFirst()) {
            wedge = wedge.clamped(observer.random());
            touchedSinceFrame = true;
            happened(new NightEvent.Unclamped());
        }
        if (camera.isPresent() && reference.isPresent()) {
            turnByFrames(advice.turns(), camera.get(), reference.get());
        } else {
            turnByCount(advice.turns());
        }
    }

    private void turnByCount(List<ScrewTurn> turns) {
        HandTurns azimuth = made(turns, ScrewTurn.Which.AZIMUTH);
        HandTurns altitude = made(turns, ScrewTurn.Which.ALTITUDE);
        wedge = wedge.turned(azimuth, altitude, observer.random());
        touchedSinceFrame = true;
        now = now.plus(costs.atTheScrews(turns.size()));
        happened(new NightEvent.ScrewsTurned(azimuth.net(), altitude.net(), azimuth.back(), altitude.back()));
    }

    private void turnByFrames(List<ScrewTurn> turns, CameraOnTube onTube, CameraOnTube.Turned frames) {
        new TurningByFrames(
                        onTube,
                        frames,
                        lastFrame,
                        wedge,
                        now.plus(costs.goingToTheScrews()),
                        costs.turning().plus(costs.look()),
                        night(),
                        step -> seen(step, frames),
                        observer.random())
                .turn(turns);
    }

    /** Logs what a frame showed of the screws, as a watch does. */
    private NightState seen(TurningByFrames.Step step, CameraOnTube.Turned frames) {
        wedge = step.wedge();
        now = step.look().at();
        NightEvent moved = step.made()
                .<NightEvent>map(made -> new NightEvent.ScrewsTurned(made.azimuth(), made.altitude()))
                .orElseGet(NightEvent.Knocked::new);
        happened(moved, Optional.of(step.look()), false);
        touchedSinceFrame = false;
        lastFrame = Optional.of(step.frame());
        happened(
                new NightEvent.SightingTaken(
                        new TurnedFrames(frames.attitudes(), Optional.of(step.frame()), Drive.STANDING)),
                Optional.empty(),
                step.isLast());
        return night();
    }

    private void oneMore(CameraOnTube.Turned frames, CameraAttitude last) {
        touchedSinceFrame = false;
        lastFrame = Optional.of(last);
        sighted(new TurnedFrames(frames.attitudes(), Optional.of(last), Drive.STANDING), Duration.ZERO);
    }

    private static HandTurns made(List<ScrewTurn> turns, ScrewTurn.Which screw) {
        return turns.stream()
                .filter(turn -> turn.screw() == screw)
                .map(ScrewTurn::made)
                .findFirst()
                .orElse(HandTurns.NONE);
    }

    private void sighted(Sighting sighting, Duration taken) {
        now = now.plus(taken);
        happened(new NightEvent.SightingTaken(sighting));
    }

    private void happened(NightEvent event) {
        happened(event, Optional.empty(), unasked == 0);
    }

    private void happened(NightEvent event, Optional<FrameWhileTurning> look, boolean isAdviceFollowed) {
        LoggedEvent logged = new LoggedEvent(events.size() + 1L, now, event);
        events.add(logged);
        Moment moment = new Moment(logged, NightState.of(events, now, models), wedge, look, isAdviceFollowed);
        moments.add(moment);
        told.accept(moment);
    }

    private FixedStar star(SightingKind kind, Optional<AdvisedStar> advised) {
        String name = advised.orElseThrow(() -> new IllegalStateException("no star is up for " + kind + " at " + now))
                .name();
        return stars.stream()
                .filter(star -> star.label().equals(name))
                .findFirst()
                .map(star -> new FixedStar(star.label(), star.place()))
                .orElseThrow(() -> new IllegalStateException(name + " is not among the stars to choose from"));
    }
}
