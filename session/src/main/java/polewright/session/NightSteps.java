package polewright.session;

import java.util.ArrayList;
import java.util.List;
import polewright.alignment.fix.AxisState;
import polewright.alignment.fix.Step;
import polewright.mount.rig.Rig;
import polewright.session.event.Correction;
import polewright.session.event.LoggedEvent;
import polewright.session.event.MoveVisitor;
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
        long seq = logged.seq();
        if (logged.event() instanceof NightEvent.MountMove move) {
            return move.acceptMove(new OfMove(seq, clamped, begun.rig()));
        }
        return logged.event()
                .asSighting()
                .map(sighting -> List.<Step>of(models.step(seq, settings.sharingItsError(seq, sighting), begun)))
                .orElse(List.of());
    }

    /** Whether the clamps are tight after an event. */
    static boolean isClampedAfter(NightEvent event, boolean before) {
        if (event instanceof NightEvent.Clamped) {
            return true;
        }
        return before && !(event instanceof NightEvent.Unclamped || event instanceof NightEvent.ScrewMove);
    }

    /**
     * What a move does to the axis.
     *
     * @param clamped whether the clamps were tight before it
     */
    private record OfMove(long seq, boolean clamped, Rig rig) implements MoveVisitor<List<Step>> {
        @Override
        public List<Step> screwsTurned(NightEvent.ScrewsTurned event) {
            return turned(new Step.Turned(seq, event.azimuth(), event.altitude()));
        }

        @Override
        public List<Step> turnNotLogged(Correction.TurnNotLogged event) {
            return turned(Step.TurnedUnlogged.after(seq, event.azimuth(), event.altitude()));
        }

        @Override
        public List<Step> clamped(NightEvent.Clamped event) {
            return List.of(new Step.Shifted(seq, rig.usualClampShift(), rig.clampingSigma()));
        }

        @Override
        public List<Step> unclamped(NightEvent.Unclamped event) {
            return List.of(loosened());
        }

        @Override
        public List<Step> knocked(NightEvent.Knocked event) {
            return List.of(new Step.Shifted(seq, AxisState.PRIOR_SIGMA));
        }

        /** Screws cannot be turned against tight clamps, so loosening them went unlogged. */
        private List<Step> turned(Step made) {
            return clamped ? List.of(loosened(), made) : List.of(made);
        }

        private Step loosened() {
            return new Step.Shifted(seq, rig.clampingSigma());
        }
    }
}
