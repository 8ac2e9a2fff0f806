package polewright.operations.table;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.operations.action.Action;
import polewright.operations.device.DeviceActions;
import polewright.operations.night.NightActions;
import polewright.operations.practice.PracticeActions;

/** Everything that a person can do. */
public final class ActionTable {
    private static final List<Action> ALL = Stream.of(NightActions.all(), PracticeActions.all(), DeviceActions.all())
            .flatMap(List::stream)
            .toList();

    private ActionTable() {}

    public static List<Action> all() {
        return ALL;
    }

    /** The action with this id. */
    public static Optional<Action> named(String id) {
        return ALL.stream().filter(action -> action.id().equals(id)).findFirst();
    }
}
