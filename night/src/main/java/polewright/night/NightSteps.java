package polewright.night;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import polewright.axis.fix.AxisState;
import polewright.axis.fix.Step;
import polewright.axis.rig.Rig;
import polewright.night.event.LoggedEvent;
import polewright.night.event.NightEvent;

/** What events mean for the fix. */
final class NightSteps {
    private NightSteps() {}

    /**
     * All of a night's steps.
     *
     * @param standing the events that have not been withdrawn
     * @throws polewright.sky.InputRefused when a sighting cannot have been made; its event number is named
     */
    static List<Step> of(List<LoggedEvent> standing, NightEvent.Begun begun) {
        SettingsDown settings = SettingsDown.of(standing);
        NightState.ModelCache models = new NightState.ModelCache();
        List<Step> steps = new ArrayList<>();
        standing.forEach(logged -> of(logged, begun, settings, models).ifPresent(steps::add));
        return steps;
    }

    /** The step that an event is, if it bears on the fix. */
    static Optional<Step> of(
            LoggedEvent logged, NightEvent.Begun begun, SettingsDown settings, NightState.ModelCache models) {
        NightEvent event = logged.event();
        long seq = logged.seq();
        Rig rig = begun.rig();
        if (event instanceof NightEvent.SightingTaken taken) {
            return Optional.of(models.step(seq, settings.sharingItsError(seq, taken.sighting()), begun));
        } else if (event instanceof NightEvent.ScrewsTurned turned) {
            return Optional.of(new Step.Turned(
                    seq, turned.azimuthTurns(), turned.altitudeTurns(), turned.azimuthBack(), turned.altitudeBack()));
        } else if (event instanceof NightEvent.Clamped) {
            return Optional.of(new Step.Shifted(seq, rig.usualClampShift(), rig.clampingSigma()));
        } else if (event instanceof NightEvent.Unclamped) {
            return Optional.of(new Step.Shifted(seq, rig.clampSigma()));
        } else if (event instanceof NightEvent.Knocked) {
            return Optional.of(new Step.Shifted(seq, AxisState.PRIOR_SIGMA));
        }
        return Optional.empty();
    }
}
