package polewright.night;

import java.util.List;
import polewright.night.event.LoggedEvent;

/** Whether a night has grown out of one that was gone through before. */
final class SameEvents {
    private SameEvents() {}

    /** Whether a night begins with just these events. */
    @SuppressWarnings("ReferenceEquality") // Mostly the very same, which is sooner seen.
    static boolean beginWith(List<LoggedEvent> first, List<LoggedEvent> night) {
        if (night.size() < first.size()) {
            return false;
        }
        for (int i = 0; i < first.size(); i++) {
            if (first.get(i) != night.get(i) && !first.get(i).equals(night.get(i))) {
                return false;
            }
        }
        return true;
    }
}
