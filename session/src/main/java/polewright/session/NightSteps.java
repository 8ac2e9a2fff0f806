package polewright.session;

import java.util.ArrayList;
import java.util.List;
import polewright.alignment.fix.AxisState;
import polewright.alignment.fix.Step;
import polewright.mount.rig.Rig;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;

/** Converts events to steps of the fix. */
final class NightSteps {
    private NightSteps() {}

    /**
     * All steps of a night.
     *
     * @param standing the events not withdrawn
     * @throws polewright.sky.InputRefused if a sighting is impossible; the message names the event number
     */
    static List<Step> of(List<LoggedEvent> standing, NightEvent.Begun begun) {
        SharedInstrumentErrors settings = SharedInstrumentErrors.of(standing);
        NightState.ModelCache models = new NightState.ModelCache();
        List<Step> steps = new ArrayList<>();
        CentringsSoFar centrings = new CentringsSoFar();
        boolean clamped = false;
        for (LoggedEvent logged : standing) {
            centrings.before(logged, begun, models).ifPresent(steps::add);
            steps.addAll(of(logged, clamped, begun, settings, models));
            clamped = isClampedAfter(logged.event(), clamped);
        }
        centrings.current(begun, models).ifPresent(steps::add);
        return steps;
    }

    /**
     * The steps for an event, if it affects the fix.
     *
     * @param clamped whether the clamps were tight before it
     */
    static List<Step> of(
            LoggedEvent logged,
            boolean clamped,
            NightEvent.Begun begun,
            SharedInstrumentErrors settings,
            NightState.ModelCache models) {
        NightEvent event = logged.event();
        long seq = logged.seq();
        Rig rig = begun.rig();
        if (event instanceof NightEvent.SightingTaken taken) {
            return List.of(models.step(seq, settings.sharingItsError(seq, taken.sighting()), begun));
        } else if (event instanceof NightEvent.ScrewsTurned turned) {
            return turned(new Step.Turned(seq, turned.azimuth(), turned.altitude()), clamped, rig);
        } else if (event instanceof NightEvent.TurnNotLogged unlogged) {
            return turned(Step.TurnedUnlogged.after(seq, unlogged.azimuth(), unlogged.altitude()), clamped, rig);
        } else if (event instanceof NightEvent.Clamped) {
            return List.of(new Step.Shifted(seq, rig.usualClampShift(), rig.clampingSigma()));
        } else if (event instanceof NightEvent.Unclamped) {
            return List.of(loosened(seq, rig));
        } else if (event instanceof NightEvent.Knocked) {
            return List.of(new Step.Shifted(seq, AxisState.PRIOR_SIGMA));
        } else if (event instanceof NightEvent.MountMove) {
            throw new IllegalStateException("no step for " + event.getClass());
        }
        return List.of();
    }

    /** Whether the clamps are tight after an event. */
    static boolean isClampedAfter(NightEvent event, boolean before) {
        if (event instanceof NightEvent.Clamped) {
            return true;
        }
        return before && !(event instanceof NightEvent.Unclamped || event instanceof NightEvent.ScrewMove);
    }

    /** Screws cannot be turned against tight clamps, so loosening them went unlogged. */
    private static List<Step> turned(Step made, boolean clamped, Rig rig) {
        return clamped ? List.of(loosened(made.seq(), rig), made) : List.of(made);
    }

    private static Step loosened(long seq, Rig rig) {
        return new Step.Shifted(seq, rig.clampingSigma());
    }
}
