package polewright.simulation.practice;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.random.RandomGenerator;
import java.util.stream.Collectors;
import polewright.alignment.advice.ScrewTurn;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.DriftDirection;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.ReadLength;
import polewright.alignment.sighting.StarDrift;
import polewright.mount.AxisOffset;
import polewright.mount.rig.HandTurns;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;
import polewright.simulation.ActionCosts;
import polewright.simulation.HiddenWedge;
import polewright.simulation.SimulatedObserver;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStar;
import polewright.sky.atlas.NamedStars;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SunGuard;
import polewright.sky.place.ObservingMoment;
import polewright.sky.time.SkyTime;

/** The state of a practice night after some actions: a pure function of the scenario and the actions. */
public final class PracticeState {
    private static final ActionCosts COSTS = ActionCosts.USUAL;
    // From one frame to the next with right ascension turned between them, as in the rehearsed nights.
    private static final Duration FRAME_AFTER_TURNING = Duration.ofSeconds(40);
    private static final Duration SHUTTER_TO_FILE = Duration.ofSeconds(2);
    private static final Angle LOWEST = Angle.ofDegrees(10);
    private static final double SCALE_STEPS_PER_DEGREE = 4;

    private final Scenario scenario;
    private final List<CompletedAction> done;
    private final HiddenWedge wedge;
    private final boolean clamped;
    private final boolean atTheScrews;
    // The camera's right-ascension position, while the tube has not been used for anything else since its last frame.
    private final Optional<Angle> cameraAt;
    private final Optional<Touch> touch;

    /**
     * One screw being turned: consecutive turns in the same sense count as one turn of the hand.
     *
     * @param first index of its first action
     * @param before the true state of the wedge before it
     * @param turns all of it so far
     */
    private record Touch(ScrewTurn.Which screw, int first, HiddenWedge before, HandTurns turns) {
        boolean isContinuedBy(PracticeAction.TurnScrew more) {
            return screw == more.screw()
                    && !turns.isPastAndBack()
                    && !more.turns().isPastAndBack()
                    && turns.lastSense() == more.turns().lastSense();
        }
    }

    private PracticeState(
            Scenario scenario,
            List<CompletedAction> done,
            HiddenWedge wedge,
            boolean clamped,
            boolean atTheScrews,
            Optional<Angle> cameraAt,
            Optional<Touch> touch) {
        this.scenario = scenario;
        this.done = List.copyOf(done);
        this.wedge = wedge;
        this.clamped = clamped;
        this.atTheScrews = atTheScrews;
        this.cameraAt = cameraAt;
        this.touch = touch;
    }

    /** The state before any action. */
    public static PracticeState begin(Scenario scenario) {
        return new PracticeState(
                scenario, List.of(), scenario.hiddenWedge(), false, false, Optional.empty(), Optional.empty());
    }

    /** The state after these actions. */
    public static PracticeState of(Scenario scenario, List<PracticeAction> actions) {
        PracticeState state = begin(scenario);
        for (PracticeAction action : actions) {
            state = state.after(action);
        }
        return state;
    }

    public Scenario scenario() {
        return scenario;
    }

    /** The completed actions, in order. */
    public List<CompletedAction> done() {
        return done;
    }

    /** The time in the practice night. */
    public Instant now() {
        return done.isEmpty() ? scenario.from() : done.get(done.size() - 1).to();
    }

    public boolean clamped() {
        return clamped;
    }

    /** The last action that showed something, if there was one. */
    public Optional<CompletedAction> lastLook() {
        return done.stream()
                .filter(action -> !(action.seen() instanceof ObservedReadings.Nothing))
                .reduce((earlier, later) -> later);
    }

    /** The number of frames. */
    public int frames() {
        return (int) done.stream()
                .filter(action -> action.seen() instanceof ObservedReadings.FrameTaken)
                .count();
    }

    /** The true axis offset. Not for the player before the debrief. */
    public AxisOffset truth() {
        return wedge.offset();
    }

    HiddenWedge wedge() {
        return wedge;
    }

    /**
     * The night after one more action.
     *
     * @throws InputRefused if it cannot be done now; the state is unchanged
     */
    public PracticeState after(PracticeAction action) {
        return action.accept(new After());
    }

    private PracticeState turned(PracticeAction.TurnScrew action) {
        requireLoose();
        Touch made = touch.filter(going -> going.isContinuedBy(action))
                .map(going -> new Touch(
                        going.screw(),
                        going.first(),
                        going.before(),
                        HandTurns.straight(going.turns().net() + action.turns().net())))
                .orElseGet(() -> new Touch(action.screw(), done.size(), wedge, action.turns()));
        boolean isNew = made.first() == done.size();
        boolean azimuth = action.screw() == ScrewTurn.Which.AZIMUTH;
        HiddenWedge after = made.before()
                .turned(
                        azimuth ? made.turns() : HandTurns.NONE,
                        azimuth ? HandTurns.NONE : made.turns(),
                        scenario.randomOfAction(made.first()));
        Duration took =
                (atTheScrews ? Duration.ZERO : COSTS.goingToTheScrews()).plus(isNew ? COSTS.turning() : Duration.ZERO);
        return new PracticeState(
                scenario,
                with(action, now().plus(took), after, new ObservedReadings.Nothing()),
                after,
                clamped,
                true,
                cameraAt,
                Optional.of(made));
    }

    private PracticeState watched(PracticeAction.WatchStar action) {
        NamedStar star = NamedStars.bundled()
                .find(action.star())
                .orElseThrow(() -> new InputRefused(
                        "no star is called '" + action.star() + "'", "use one from the advice, such as Rigel"));
        FixedStar body = new FixedStar(star.label(), star.place());
        Instant began = now().plus(COSTS.settingAStar());
        Instant to = began.plus(action.length());
        requireUp(body, began);
        requireUp(body, to);
        Rig rig = scenario.rig();
        StarDrift drift = observer().drift(wedge, began, body, action.length(), StarDrift.usualSigma(rig));
        ObservedReadings.Drifted seen = new ObservedReadings.Drifted(
                star.label(),
                began,
                action.length(),
                counted(drift.drift().angle(), rig.finestOptic()),
                drift.direction() instanceof DriftDirection.OnSky way && way.north(),
                rig.finestOptic());
        return withLook(action, to, seen, Optional.empty());
    }

    private PracticeState withFrame(PracticeAction.TakeFrame action) {
        if (!scenario.hasCamera()) {
            throw new InputRefused("this practice has no camera", "begin another, with a camera");
        }
        boolean isSamePlace = cameraAt.filter(action.turned()::equals).isPresent();
        Duration took = isSamePlace
                ? COSTS.look()
                : cameraAt.isPresent() ? FRAME_AFTER_TURNING : COSTS.pointing().plus(FRAME_AFTER_TURNING);
        Instant to = now().plus(took);
        requireDark(to);
        ObservedReadings.FrameTaken seen =
                new ObservedReadings.FrameTaken(frames() + 1, to.minus(SHUTTER_TO_FILE), action.turned());
        // The screen is next to the screws: an observer who only looks stays there.
        return new PracticeState(
                scenario,
                with(action, to, wedge, seen),
                wedge,
                clamped,
                atTheScrews && isSamePlace,
                Optional.of(action.turned()),
                Optional.empty());
    }

    private PracticeState withTouch(PracticeAction action, HiddenWedge after, boolean clampedAfter, Duration took) {
        Optional<Angle> camera = action instanceof PracticeAction.MoveByHand ? Optional.empty() : cameraAt;
        return new PracticeState(
                scenario,
                with(action, now().plus(took), after, new ObservedReadings.Nothing()),
                after,
                clampedAfter,
                false,
                camera,
                Optional.empty());
    }

    private PracticeState withLook(PracticeAction action, Instant to, ObservedReadings seen, Optional<Angle> camera) {
        return new PracticeState(
                scenario, with(action, to, wedge, seen), wedge, clamped, false, camera, Optional.empty());
    }

    private List<CompletedAction> with(PracticeAction action, Instant to, HiddenWedge after, ObservedReadings seen) {
        List<CompletedAction> all = new ArrayList<>(done);
        all.add(new CompletedAction(action, now(), to, after, seen));
        return all;
    }

    private RandomGenerator random() {
        return scenario.randomOfAction(done.size());
    }

    private SimulatedObserver observer() {
        return new SimulatedObserver(scenario.weather(), random());
    }

    private void requireLoose() {
        if (clamped) {
            throw new InputRefused("the clamps are tight", "loosen them first");
        }
    }

    private Optic optic(String name) {
        return scenario.rig()
                .optic(name)
                .orElseThrow(() -> new InputRefused(
                        "the rig has no optic called '" + name + "'",
                        "look through one of these: "
                                + scenario.rig().optics().stream()
                                        .map(optic -> optic.name().toLowerCase(Locale.ROOT))
                                        .collect(Collectors.joining(", "))));
    }

    private ObservingMoment requireDark(Instant at) {
        ObservingMoment moment = ObservingMoment.of(scenario.site(), SkyTime.of(at), scenario.weather());
        if (SunGuard.at(moment).isSunUp()) {
            throw new InputRefused(
                    "the Sun is up by then, so no star can be seen; never sweep for one", "begin another practice");
        }
        return moment;
    }

    private void requireUp(FixedStar star, Instant at) {
        ObservingMoment moment = requireDark(at);
        Angle altitude = moment.refracted(Ephemeris.apparent(star, moment)).altitude();
        if (altitude.compareTo(LOWEST) < 0) {
            throw new InputRefused(
                    star.label() + " is " + (altitude.radians() < 0 ? "below the horizon" : "too low to watch"),
                    "watch a star that is up, such as one from the advice");
        }
    }

    /** To a tenth of a division, or to a second of arc. */
    private static ReadLength counted(Angle drift, Optional<Optic> finest) {
        return finest.flatMap(Optic::division)
                .map(division ->
                        ReadLength.ofDivisions(Math.rint(10 * drift.radians() / division.radians()) / 10, division))
                .orElseGet(() -> ReadLength.ofArcseconds(Math.rint(drift.arcseconds())));
    }

    /** What each action does to this state. */
    private final class After implements PracticeAction.Visitor<PracticeState> {
        @Override
        public PracticeState turnScrew(PracticeAction.TurnScrew turn) {
            return turned(turn);
        }

        @Override
        public PracticeState moveByHand(PracticeAction.MoveByHand action) {
            requireLoose();
            return withTouch(
                    action, wedge.moved(action.azimuth(), action.altitude(), random()), clamped, COSTS.movingByHand());
        }

        @Override
        public PracticeState clamp(PracticeAction.Clamp action) {
            if (clamped) {
                throw new InputRefused("the clamps are already tight", "loosen them first");
            }
            return withTouch(action, wedge.clamped(random()), true, COSTS.clamping());
        }

        @Override
        public PracticeState unclamp(PracticeAction.Unclamp action) {
            if (!clamped) {
                throw new InputRefused("the clamps are already loose", "tighten them first");
            }
            // Its time is that of going to the screws.
            return withTouch(action, wedge.clamped(random()), false, Duration.ZERO);
        }

        @Override
        public PracticeState rockAndLook(PracticeAction.RockAndLook action) {
            Optic optic = optic(action.optic());
            Instant to = now().plus(COSTS.stillPoint());
            ObservingMoment moment = requireDark(to);
            return withLook(
                    action, to, EyepieceView.of(wedge, scenario.tube(), optic, moment, observer()), Optional.empty());
        }

        @Override
        public PracticeState readCompass(PracticeAction.ReadCompass action) {
            Instant to = now().plus(COSTS.reading());
            double read = observer()
                    .compass(wedge, to, CompassBearing.USUAL_SIGMA)
                    .magneticBearing()
                    .degrees();
            return withLook(action, to, new ObservedReadings.OnCompass(Math.rint(read) % 360), cameraAt);
        }

        @Override
        public PracticeState readScale(PracticeAction.ReadScale action) {
            Instant to = now().plus(COSTS.reading());
            double read = observer()
                    .scale(wedge, to, LevelledScale.USUAL_SIGMA)
                    .altitude()
                    .degrees();
            return withLook(
                    action,
                    to,
                    new ObservedReadings.OnScale(Math.rint(read * SCALE_STEPS_PER_DEGREE) / SCALE_STEPS_PER_DEGREE),
                    cameraAt);
        }

        @Override
        public PracticeState watchStar(PracticeAction.WatchStar watch) {
            return watched(watch);
        }

        @Override
        public PracticeState takeFrame(PracticeAction.TakeFrame frame) {
            return withFrame(frame);
        }

        @Override
        public PracticeState waiting(PracticeAction.Wait action) {
            return withLook(action, now().plus(action.length()), new ObservedReadings.Nothing(), cameraAt);
        }
    }
}
