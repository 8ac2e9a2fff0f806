package polewright.operations.sighting;

import java.util.List;
import java.util.Optional;
import polewright.alignment.advice.SightingKind;
import polewright.alignment.sighting.Sighting;
import polewright.operations.action.Action;
import polewright.operations.action.FilledAction;

/** The sightings that are typed in. */
public final class SightingEntries {
    private static final List<SightingEntry> ALL = List.of(
            new CompassEntry(),
            new ScaleEntry(),
            new ShadowEntry(),
            new CentreOfRotationEntry(),
            new DriftEntry(),
            new TrailEntry(),
            new BearingEntry(),
            new AltitudeEntry());

    private SightingEntries() {}

    /** All of them, the coarse ones first. */
    public static List<SightingEntry> all() {
        return ALL;
    }

    /** The entry that an action belongs to; empty if it is not a sighting that is typed in. */
    public static Optional<SightingEntry> of(Action action) {
        return ALL.stream()
                .filter(entry -> entry.action().id().equals(action.id()))
                .findFirst();
    }

    /** The entry for an advised sighting; empty for one that is not typed in, such as camera frames. */
    public static Optional<SightingEntry> of(SightingKind advised) {
        return ALL.stream().filter(entry -> entry.answers().contains(advised)).findFirst();
    }

    /** A logged sighting as it was entered; empty if it is not typed in, such as camera frames. */
    public static Optional<FilledAction> entered(Sighting logged) {
        return ALL.stream()
                .flatMap(entry -> entry.typed(logged).map(typed -> new FilledAction(entry.action(), typed)).stream())
                .findFirst();
    }
}
