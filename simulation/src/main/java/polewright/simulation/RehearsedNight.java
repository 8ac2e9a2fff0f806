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
 * A night at a {@link HiddenWedge}, played by an observer who follows the advice until it says stop.
 *
 * <p>The advice sees only the events, never the wedge.
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
    private final Consumer<Moment> listener;
    private final NightState.ModelCache models = new NightState.ModelCache();
    private final List<LoggedEvent> events = new ArrayList<>();
    private final List<Moment> moments = new ArrayList<>();
    private HiddenWedge wedge;
    private Instant now;
    // Sightings still to be taken before the first advice.
    private int pendingSightings;
    // The last set of frames that measured the axis, while only screws have been touched since.
    private Optional<CameraOnTube.Turned> reference = Optional.empty();
    // The last frame after screws were turned or clamps touched.
    private Optional<CameraAttitude> lastFrame = Optional.empty();
    // Whether clamps or screws have been touched since the last frame, so that one more shows where the axis is now.
    private boolean touchedSinceFrame;

    /**
     * The night after one event.
     *
     * @param wedge its true state then
     * @param look the frame taken after the event, if that was a turn guided by frames
     * @param isAdviceFollowed whether the next event follows the advice; not if more had to be logged first
     */
    public record Moment(
            LoggedEvent event,
            NightState night,
            HiddenWedge wedge,
            Optional<FrameWhileTurning> look,
            boolean isAdviceFollowed) {}

    /**
     * The settings of a night.
     *
     * @param siteName the site's name in the log
     * @param wedge its initial state
     * @param allowance the tolerance, if there is no work
     * @param work what the night is for, logged before anything else; it then sets the tolerance
     * @param costs how long everything takes
     * @param from when the night begins
     * @param stars to choose from
     * @param before sightings to take before the first advice
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

        /** A setting without work, with the usual action times. */
        public Setting(
                String siteName,
                HiddenWedge wedge,
                DiscAllowance allowance,
                Instant from,
                List<NamedStar> stars,
                List<SightingKind> before) {
            this(siteName, wedge, allowance, Optional.empty(), ActionCosts.USUAL, from, stars, before);
        }

        /** The usual air over the site. */
        public Weather weather() {
            return Weather.standardAt(wedge.site().heightMetres());
        }
    }

    private RehearsedNight(
            Setting setting, Optional<CameraOnTube> camera, Consumer<Moment> listener, RandomGenerator random) {
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
        this.listener = listener;
    }

    /** The rig's own camera, with attitudes of its usual accuracy and no rendered pixels. */
    private Optional<CameraOnTube> cameraOfTheRig() {
        return begun.rig()
                .bestCamera()
                .map(c -> new CameraOnTube(
                        (fork, at) -> observer.attitude(fork, at, c), TubeOnFork.SQUARE, USUAL_POLAR_DISTANCE));
    }

    /**
     * Plays from bare ground to stop.
     *
     * @param siteName the site's name in the log
     * @param wedge its initial state
     * @param from when the night begins
     * @param stars to choose from
     * @return every event with what was known and what was true after it; the last advice is to stop, unless 60
     *     events did not suffice
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
     * The same with another camera on the tube.
     *
     * @param camera replaces the rig's, for which the advice is given
     * @param listener receives each moment as it happens
     */
    public static List<Moment> play(
            Setting setting, Optional<CameraOnTube> camera, Consumer<Moment> listener, RandomGenerator random) {
        return new RehearsedNight(setting, camera, listener, random).played(setting.before());
    }

    private List<Moment> played(List<SightingKind> before) {
        pendingSightings = before.size() + (work.isPresent() ? 1 : 0);
        log(begun);
        work.ifPresent(set -> {
            pendingSightings--;
            log(new NightEvent.WorkSet(set));
        });
        for (SightingKind kind : before) {
            pendingSightings--;
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
            log(new NightEvent.Noted("waited for dark"));
        } else if (advice instanceof Advice.MoveByHand move) {
            wedge = wedge.moved(move.azimuth(), move.altitude(), observer.random());
            now = now.plus(costs.movingByHand());
            reference = Optional.empty();
            log(new NightEvent.Knocked());
        } else if (advice instanceof Advice.Clamp) {
            wedge = wedge.clamped(observer.random());
            now = now.plus(costs.clamping());
            touchedSinceFrame = true;
            log(new NightEvent.Clamped());
        } else {
            throw new IllegalStateException("cannot follow " + advice);
        }
    }

    private void sight(SightingKind kind, Duration watch, Optional<AdvisedStar> advised) {
        switch (kind) {
            case COMPASS -> logSighting(observer.compass(wedge, now, CompassBearing.USUAL_SIGMA), costs.reading());
            case LEVEL_AND_SCALE -> logSighting(observer.scale(wedge, now, LevelledScale.USUAL_SIGMA), costs.reading());
            case SHADOW ->
                logSighting(
                        observer.bearing(
                                wedge, now, SolarSystemBody.SUN, BodyBearing.Line.SHADOW, BodyBearing.USUAL_SIGMA),
                        costs.reading());
            case STILL_POINT ->
                logSighting(
                        observer.stillPoint(
                                wedge,
                                now,
                                star(kind, advised),
                                begun.rig().widestOptic().orElseThrow()),
                        costs.stillPoint());
            case FRAMES -> takeFrames(camera.orElseThrow());
            case DRIFT_ON_MERIDIAN, DRIFT_EAST_OR_WEST ->
                logSighting(
                        observer.drift(wedge, now, star(kind, advised), watch, StarDrift.usualSigma(begun.rig())),
                        watch.plus(costs.settingAStar()));
        }
    }

    private void takeFrames(CameraOnTube onTube) {
        if (reference.isPresent() && touchedSinceFrame) {
            now = now.plus(costs.look());
            logOneMoreFrame(reference.get(), onTube.anotherFrame(reference.get().fork(), wedge, now));
            return;
        }
        now = now.plus(costs.pointing());
        CameraOnTube.Turned turned = onTube.turned(wedge, now);
        reference = Optional.of(turned);
        lastFrame = Optional.empty();
        touchedSinceFrame = false;
        logSighting(TurnedFrames.of(turned.attitudes(), Drive.STANDING), CameraOnTube.TAKES);
    }

    private void turn(Advice.TurnScrews advice) {
        if (advice.loosenFirst()) {
            wedge = wedge.clamped(observer.random());
            touchedSinceFrame = true;
            log(new NightEvent.Unclamped());
        }
        if (camera.isPresent() && reference.isPresent()) {
            turnByFrames(advice.turns(), camera.get(), reference.get());
        } else {
            turnByCount(advice.turns());
        }
    }

    private void turnByCount(List<ScrewTurn> turns) {
        HandTurns azimuth = handTurns(turns, ScrewTurn.Which.AZIMUTH);
        HandTurns altitude = handTurns(turns, ScrewTurn.Which.ALTITUDE);
        wedge = wedge.turned(azimuth, altitude, observer.random());
        touchedSinceFrame = true;
        now = now.plus(costs.atTheScrews(turns.size()));
        log(new NightEvent.ScrewsTurned(azimuth.net(), altitude.net(), azimuth.back(), altitude.back()));
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
        log(moved, Optional.of(step.look()), false);
        touchedSinceFrame = false;
        lastFrame = Optional.of(step.frame());
        log(
                new NightEvent.SightingTaken(
                        new TurnedFrames(frames.attitudes(), Optional.of(step.frame()), Drive.STANDING)),
                Optional.empty(),
                step.isLast());
        return night();
    }

    private void logOneMoreFrame(CameraOnTube.Turned frames, CameraAttitude last) {
        touchedSinceFrame = false;
        lastFrame = Optional.of(last);
        logSighting(new TurnedFrames(frames.attitudes(), Optional.of(last), Drive.STANDING), Duration.ZERO);
    }

    private static HandTurns handTurns(List<ScrewTurn> turns, ScrewTurn.Which screw) {
        return turns.stream()
                .filter(turn -> turn.screw() == screw)
                .map(ScrewTurn::made)
                .findFirst()
                .orElse(HandTurns.NONE);
    }

    private void logSighting(Sighting sighting, Duration taken) {
        now = now.plus(taken);
        log(new NightEvent.SightingTaken(sighting));
    }

    private void log(NightEvent event) {
        log(event, Optional.empty(), pendingSightings == 0);
    }

    private void log(NightEvent event, Optional<FrameWhileTurning> look, boolean isAdviceFollowed) {
        LoggedEvent logged = new LoggedEvent(events.size() + 1L, now, event);
        events.add(logged);
        Moment moment = new Moment(logged, NightState.of(events, now, models), wedge, look, isAdviceFollowed);
        moments.add(moment);
        listener.accept(moment);
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
