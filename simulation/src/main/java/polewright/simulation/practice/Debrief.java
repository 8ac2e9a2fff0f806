package polewright.simulation.practice;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.random.RandomGenerator;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.ScrewTurn;
import polewright.alignment.allowance.Allowance;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.sighting.Sighting;
import polewright.mount.AxisOffset;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;
import polewright.simulation.ActionCosts;
import polewright.simulation.PlainRoutine;
import polewright.simulation.RehearsedNight;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStars;

/**
 * The results of a completed practice night.
 *
 * @param done every action, in order
 * @param byKind time by kind of action; adds up to {@code total}
 * @param total from the beginning to now
 * @param unneeded actions that took time and were not needed, in order
 * @param atFirst true initial axis offset
 * @param truth true axis offset now
 * @param within whether that is within the allowance
 * @param stopAdvised when the advice first said stop, if it did
 * @param advised how long an observer takes who follows the advice, on the same wedge
 * @param plain how long an observer takes with a handbook and without advice
 */
public record Debrief(
        List<CompletedAction> done,
        Map<PracticeAction.Kind, Duration> byKind,
        Duration total,
        List<Unneeded> unneeded,
        AxisOffset atFirst,
        AxisOffset truth,
        boolean within,
        Optional<Instant> stopAdvised,
        Routine advised,
        Routine plain) {
    // Separate from the seeds of actions, which are never so many.
    private static final int ADVISED_STREAM = 1_000_001;
    private static final int PLAIN_STREAM = 1_000_002;

    /** Why an action was not needed. */
    public enum Reason {
        AFTER_STOP,
        NOT_LOGGED,
        TOO_FAR,
        WRONG_WAY,
        WAITED
    }

    /**
     * An action that was not needed.
     *
     * @param cost the time it took
     */
    public record Unneeded(CompletedAction action, Reason reason, Duration cost) {}

    /**
     * A routine played on the same wedge.
     *
     * @param took until it stopped
     * @param within whether the axis really was within the allowance then
     */
    public record Routine(Duration took, boolean within) {}

    public Debrief {
        done = List.copyOf(done);
        byKind = Map.copyOf(byKind);
        unneeded = List.copyOf(unneeded);
    }

    /**
     * The debrief.
     *
     * @param night the practice night
     * @param events of the practice's own log
     */
    public static Debrief of(PracticeState night, List<LoggedEvent> events) {
        Map<PracticeAction.Kind, Duration> byKind = new EnumMap<>(PracticeAction.Kind.class);
        night.done().forEach(done -> byKind.merge(done.action().kind(), done.took(), Duration::plus));
        Allowance allowance = NightState.of(events).allowance();
        Optional<Instant> stop = stopAdvised(events);
        return new Debrief(
                night.done(),
                byKind,
                Duration.between(night.scenario().from(), night.now()),
                unneeded(night, events, allowance, stop),
                night.scenario().hiddenWedge().offset(),
                night.truth(),
                allowance.contains(night.truth()),
                stop,
                advised(night.scenario(), allowance),
                plain(night.scenario(), allowance));
    }

    private static Optional<Instant> stopAdvised(List<LoggedEvent> events) {
        NightState.ModelCache models = new NightState.ModelCache();
        for (int i = 1; i <= events.size(); i++) {
            LoggedEvent last = events.get(i - 1);
            if (NightState.of(events.subList(0, i), last.at(), models).advice() instanceof Advice.Stop) {
                return Optional.of(last.at());
            }
        }
        return Optional.empty();
    }

    private static List<Unneeded> unneeded(
            PracticeState night, List<LoggedEvent> events, Allowance allowance, Optional<Instant> stop) {
        List<Unneeded> found = new ArrayList<>();
        AxisOffset before = night.scenario().hiddenWedge().offset();
        for (int i = 0; i < night.done().size(); i++) {
            CompletedAction done = night.done().get(i);
            AxisOffset was = before;
            reason(night, i, was, events, allowance, stop)
                    .ifPresent(reason -> found.add(new Unneeded(done, reason, done.took())));
            before = done.wedge().offset();
        }
        return found;
    }

    private static Optional<Reason> reason(
            PracticeState night,
            int index,
            AxisOffset before,
            List<LoggedEvent> events,
            Allowance allowance,
            Optional<Instant> stop) {
        CompletedAction done = night.done().get(index);
        if (stop.filter(at -> !done.from().isBefore(at)).isPresent()) {
            return Optional.of(Reason.AFTER_STOP);
        }
        if (done.action().kind() == PracticeAction.Kind.WAITING) {
            return Optional.of(Reason.WAITED);
        }
        if (done.action() instanceof PracticeAction.TurnScrew turn) {
            return misjudgement(turn, before, done.wedge().offset(), allowance);
        }
        boolean isLook = done.seen().loggedAs().isPresent();
        return isLook && !isLogged(night, index, events) ? Optional.of(Reason.NOT_LOGGED) : Optional.empty();
    }

    /** Whether such a sighting was logged after this look, before the next of its kind and before the axis moved. */
    private static boolean isLogged(PracticeState night, int index, List<LoggedEvent> events) {
        CompletedAction look = night.done().get(index);
        Optional<Instant> end = night.done().subList(index + 1, night.done().size()).stream()
                .filter(later -> later.action().getClass().equals(look.action().getClass()) || moves(later.action()))
                .map(CompletedAction::to)
                .findFirst();
        return events.stream()
                .filter(logged -> logged.event()
                        .asSighting()
                        .map(Sighting::format)
                        .equals(look.seen().loggedAs()))
                .map(LoggedEvent::at)
                .anyMatch(at -> !at.isBefore(look.to())
                        && end.filter(next -> !at.isBefore(next)).isEmpty());
    }

    private static boolean moves(PracticeAction action) {
        return switch (action.kind()) {
            case TURNING, MOVING, CLAMPING -> true;
            case READING, EYEPIECE, DRIFT, FRAMES, WAITING -> false;
        };
    }

    /** Each screw is judged by its own direction; within the allowance's depth any turn is accepted. */
    private static Optional<Reason> misjudgement(
            PracticeAction.TurnScrew turn, AxisOffset before, AxisOffset after, Allowance allowance) {
        double depth = allowance.depth().radians();
        double was = along(turn.screw(), before.minus(allowance.bestAim()));
        double is = along(turn.screw(), after.minus(allowance.bestAim()));
        if (Math.abs(is) <= depth || (Math.abs(is) <= Math.abs(was) && was * is > 0)) {
            return Optional.empty();
        }
        if (was * is < 0) {
            return Optional.of(Reason.TOO_FAR);
        }
        return Optional.of(Reason.WRONG_WAY);
    }

    private static double along(ScrewTurn.Which screw, AxisOffset offset) {
        return screw == ScrewTurn.Which.AZIMUTH
                ? offset.east().radians()
                : offset.up().radians();
    }

    private static Routine advised(Scenario scenario, Allowance allowance) {
        List<RehearsedNight.Moment> night = RehearsedNight.play(
                setting(scenario, DiscAllowance.VISUAL),
                Optional.empty(),
                moment -> {},
                random(scenario, ADVISED_STREAM));
        RehearsedNight.Moment last = night.get(night.size() - 1);
        return new Routine(
                Duration.between(scenario.from(), last.event().at()),
                allowance.contains(last.wedge().offset()));
    }

    /** Without advice only one figure is known: how far off the axis may be, in any direction. */
    private static Routine plain(Scenario scenario, Allowance allowance) {
        Angle tolerated = allowance.depth();
        List<PlainRoutine.Moment> night =
                PlainRoutine.play(setting(scenario, new DiscAllowance(tolerated)), random(scenario, PLAIN_STREAM));
        PlainRoutine.Moment last = night.get(night.size() - 1);
        return new Routine(
                Duration.between(scenario.from(), last.at()),
                allowance.contains(last.wedge().offset()));
    }

    private static RandomGenerator random(Scenario scenario, int which) {
        return scenario.randomOfAction(which);
    }

    private static RehearsedNight.Setting setting(Scenario scenario, DiscAllowance allowance) {
        return new RehearsedNight.Setting(
                scenario.siteName(),
                scenario.hiddenWedge(),
                allowance,
                Optional.of(scenario.work()),
                ActionCosts.USUAL,
                scenario.from(),
                NamedStars.bundled().all(),
                List.of());
    }
}
