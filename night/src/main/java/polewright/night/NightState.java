package polewright.night;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import polewright.axis.advice.Advice;
import polewright.axis.advice.Adviser;
import polewright.axis.advice.Confirmation;
import polewright.axis.advice.Situation;
import polewright.axis.allowance.Allowance;
import polewright.axis.fix.AxisState;
import polewright.axis.fix.Fix;
import polewright.axis.fix.FixSolver;
import polewright.axis.fix.Step;
import polewright.axis.sighting.CompassBearing;
import polewright.axis.sighting.LevelledScale;
import polewright.night.event.LoggedEvent;
import polewright.night.event.NightEvent;
import polewright.sky.InputRefused;

/**
 * What a night's events come to: a pure function of them.
 *
 * @param begun how the night began
 * @param fix where the axis points
 * @param allowance what is tolerated now
 * @param clamped whether the clamps are tight
 * @param advice what to do next
 * @param standing the events that have not been withdrawn, in order
 */
public record NightState(
        NightEvent.Begun begun,
        Fix fix,
        Allowance allowance,
        boolean clamped,
        Advice advice,
        List<LoggedEvent> standing) {
    /**
     * The state that these events lead to.
     *
     * @throws InputRefused when the events do not begin with a beginning, or a sighting among them cannot have been
     *     made; its event number is named
     */
    public static NightState of(List<LoggedEvent> events) {
        return of(events, new ModelCache());
    }

    /** The same, sharing worked-out sightings between calls on a growing night. */
    public static NightState of(List<LoggedEvent> events, ModelCache models) {
        List<LoggedEvent> standing = standing(events);
        if (standing.isEmpty() || !(standing.get(0).event() instanceof NightEvent.Begun begun)) {
            throw new InputRefused("the night has no beginning", "start it with: polewright begin --site LAT,LON");
        }
        List<Step> steps = new ArrayList<>();
        Allowance allowance = begun.allowance();
        boolean clamped = false;
        Optional<Long> lastSinceClamp = Optional.empty();
        boolean compassRead = false;
        boolean scaleRead = false;
        for (LoggedEvent logged : standing) {
            NightEvent event = logged.event();
            if (event instanceof NightEvent.SightingTaken taken) {
                steps.add(models.step(logged.seq(), taken, begun));
                lastSinceClamp = Optional.of(logged.seq());
                compassRead |= taken.sighting() instanceof CompassBearing;
                scaleRead |= taken.sighting() instanceof LevelledScale;
            } else if (event instanceof NightEvent.ScrewsTurned turned) {
                steps.add(new Step.Turned(logged.seq(), turned.azimuthTurns(), turned.altitudeTurns()));
                clamped = false;
            } else if (event instanceof NightEvent.Clamped) {
                steps.add(new Step.Shifted(logged.seq(), begun.rig().clampSigma()));
                clamped = true;
                lastSinceClamp = Optional.empty();
            } else if (event instanceof NightEvent.Unclamped) {
                steps.add(new Step.Shifted(logged.seq(), begun.rig().clampSigma()));
                clamped = false;
            } else if (event instanceof NightEvent.Knocked) {
                steps.add(new Step.Shifted(logged.seq(), AxisState.PRIOR_SIGMA));
                compassRead = false;
                scaleRead = false;
                lastSinceClamp = Optional.empty();
            } else if (event instanceof NightEvent.AllowanceSet set) {
                allowance = set.allowance();
            }
        }
        Fix fix = FixSolver.solve(begun.site(), begun.rig(), begun.weather(), steps);
        Situation situation = new Situation(
                begun.rig(), fix, allowance, clamped, confirmation(fix, lastSinceClamp), compassRead, scaleRead);
        return new NightState(begun, fix, allowance, clamped, Adviser.advise(situation), standing);
    }

    private static Confirmation confirmation(Fix fix, Optional<Long> lastSinceClamp) {
        return lastSinceClamp
                .flatMap(fix::agreement)
                .map(a -> a.contradictory() ? Confirmation.CONTRADICTS : Confirmation.AGREES)
                .orElse(Confirmation.NONE);
    }

    /** The events that count: those not withdrawn, or whose withdrawal was itself withdrawn; withdrawals left out. */
    public static List<LoggedEvent> standing(List<LoggedEvent> events) {
        Map<Long, Set<Long>> withdrawnBy = new HashMap<>();
        for (LoggedEvent logged : events) {
            if (logged.event() instanceof NightEvent.Withdrawn withdrawn) {
                withdrawnBy
                        .computeIfAbsent(withdrawn.seq(), s -> new HashSet<>())
                        .add(logged.seq());
            }
        }
        return events.stream()
                .filter(e -> !(e.event() instanceof NightEvent.Withdrawn) && stands(e.seq(), withdrawnBy))
                .toList();
    }

    /** The last event that {@code undo} would take back, if any: not the beginning. */
    public Optional<LoggedEvent> lastUndoable() {
        return standing.size() > 1 ? Optional.of(standing.get(standing.size() - 1)) : Optional.empty();
    }

    private static boolean stands(long seq, Map<Long, Set<Long>> withdrawnBy) {
        return withdrawnBy.getOrDefault(seq, Set.of()).stream().noneMatch(by -> stands(by, withdrawnBy));
    }

    /** Worked-out sightings by event, so that a night that grows by one does not work out the others again. */
    public static final class ModelCache {
        private final Map<Key, Step.Sighted> steps = new HashMap<>();

        private record Key(long seq, NightEvent.SightingTaken taken, NightEvent.Begun begun) {}

        private Step.Sighted step(long seq, NightEvent.SightingTaken taken, NightEvent.Begun begun) {
            return steps.computeIfAbsent(new Key(seq, taken, begun), key -> {
                try {
                    return Step.Sighted.of(seq, taken.sighting(), begun.site(), begun.weather());
                } catch (InputRefused refused) {
                    throw refused.at("event " + seq);
                }
            });
        }
    }
}
