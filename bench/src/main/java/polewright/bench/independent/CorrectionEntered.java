package polewright.bench.independent;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import polewright.mount.rig.RigCorrection;
import polewright.session.event.Correction;
import polewright.session.event.NightEvent;

/** The correction that a person enters after recognising a named mistake as their own. */
final class CorrectionEntered {
    private CorrectionEntered() {}

    /**
     * The events, in the order in which they are entered.
     *
     * @param stated the details of the night as stated
     * @param truly as they should have been stated
     * @param corrections what should have been logged, by the number of what was
     * @param unloggedAfter the number of the event after which screws were turned without logging it; 0 if none were
     * @param last the number of the last event
     */
    static List<NightEvent> of(
            Mistake mistake,
            Told stated,
            Told truly,
            Map<Long, NightEvent> corrections,
            long unloggedAfter,
            long last) {
        return switch (mistake) {
            case LATITUDE_SIGN, LONGITUDE_SIGN, SWAPPED -> List.of(new Correction.SiteCorrected(truly.site()));
            case CLOCK_HOURS, DATE ->
                List.of(new Correction.ClockCorrected(
                        1, last, stated.clockAhead().negated()));
            case VIEW -> {
                List<NightEvent> all = new ArrayList<>();
                all.add(new Correction.RigCorrected(new RigCorrection.AnotherRig(truly.rig())));
                all.addAll(replacing(corrections));
                yield all;
            }
            case DRIFT_SIGN, WRONG_STAR, OTHER_SIDE, REVERSED_TURN, OTHER_SCREW, COMPASS_END, DECLINATION_SIGN ->
                replacing(corrections);
            case UNLOGGED_TURN -> List.of(new Correction.TurnNotLogged(unloggedAfter, true, true));
        };
    }

    private static List<NightEvent> replacing(Map<Long, NightEvent> corrections) {
        List<NightEvent> all = new ArrayList<>();
        corrections.forEach((seq, meant) -> {
            if (meant instanceof NightEvent.ScrewsTurned turned) {
                all.add(new Correction.TurnCorrected(seq, turned));
            } else if (meant instanceof NightEvent.Measurement measured) {
                all.add(new Correction.MeasurementCorrected(seq, measured));
            }
        });
        return all;
    }
}
