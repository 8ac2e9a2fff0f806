package polewright.operations.night;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.operations.action.Action;
import polewright.operations.sighting.Centring;
import polewright.operations.sighting.SightingEntries;
import polewright.operations.sighting.SightingEntry;

/** All actions that add to the log and need no file. */
public final class NightActions {
    private static final List<Action> ALL = Stream.concat(
                    SightingEntries.all().stream().map(SightingEntry::action),
                    Stream.of(
                            Centring.ACTION,
                            WedgeActions.TURN,
                            WedgeActions.CLAMP,
                            WedgeActions.UNCLAMP,
                            WedgeActions.KNOCK,
                            SkipAction.SKIP,
                            LogActions.NOTE,
                            LogActions.UNDO,
                            LogActions.RETIME,
                            TargetAction.TARGET))
            .toList();

    private NightActions() {}

    /** All of them, the sightings first. */
    public static List<Action> all() {
        return ALL;
    }

    /** The action with this id. */
    public static Optional<Action> named(String id) {
        return ALL.stream().filter(action -> action.id().equals(id)).findFirst();
    }
}
