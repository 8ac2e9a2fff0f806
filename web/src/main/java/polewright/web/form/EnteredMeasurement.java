package polewright.web.form;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import polewright.operations.sighting.Centring;
import polewright.operations.sighting.Replacement;
import polewright.operations.sighting.SightingEntries;
import polewright.session.event.NightEvent;

/**
 * A logged measurement as it was entered, to be corrected in its form.
 *
 * @param form the form for this measurement
 * @param values the entries, by field
 */
public record EnteredMeasurement(CommandForm form, Map<String, String> values) {
    public EnteredMeasurement {
        values = Map.copyOf(values);
    }

    /** Empty for a measurement that no form enters, such as camera frames. */
    public static Optional<EnteredMeasurement> of(NightEvent.Measurement measurement) {
        if (measurement instanceof NightEvent.StarCentred star) {
            return Optional.of(new EnteredMeasurement(SightingForms.CENTRE, Centring.typed(star.centred())));
        }
        return measurement instanceof NightEvent.SightingTaken taken
                ? SightingEntries.entered(taken.sighting())
                        .map(entered -> new EnteredMeasurement(CommandForm.of(entered.action()), entered.typed()))
                : Optional.empty();
    }

    /** The same entries, as a replacement for the measurement of this number. */
    public EnteredMeasurement replacing(long seq) {
        Map<String, String> more = new LinkedHashMap<>(values);
        more.put(Replacement.INSTEAD_OF.name(), Long.toString(seq));
        return new EnteredMeasurement(form, more);
    }
}
