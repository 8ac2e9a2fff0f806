package polewright.web.form;

import java.util.List;
import java.util.Optional;
import polewright.alignment.advice.SightingKind;
import polewright.operations.sighting.Centring;
import polewright.operations.sighting.SightingEntries;
import polewright.operations.sighting.SightingEntry;

/** Forms for observations and readings at the wedge. */
public final class SightingForms {
    private static final List<CommandForm> TYPED = SightingEntries.all().stream()
            .map(SightingEntry::action)
            .map(CommandForm::of)
            .toList();

    public static final CommandForm CENTRE = CommandForm.of(Centring.ACTION).requiring(Centring.BODY, Centring.READS);

    private SightingForms() {}

    /** The sightings that measure the axis and are typed in, the coarse ones first. */
    public static List<CommandForm> typed() {
        return TYPED;
    }

    /** The form in which an advised sighting is typed in; empty for one that is not. */
    public static Optional<CommandForm> of(SightingKind kind) {
        return SightingEntries.of(kind).map(SightingEntry::action).map(CommandForm::of);
    }
}
