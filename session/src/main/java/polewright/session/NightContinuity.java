package polewright.session;

import java.util.Arrays;
import java.util.List;
import polewright.session.event.LoggedEvent;

/** Whether a night has grown out of one that was gone through before. */
final class NightContinuity {
    private NightContinuity() {}

    /** Whether a night begins with just these events. */
    static boolean beginWith(List<LoggedEvent> first, List<LoggedEvent> night) {
        return night.size() >= first.size()
                // Arrays are gone through several times as fast as lists of lists are.
                && Arrays.equals(first.toArray(), night.subList(0, first.size()).toArray());
    }
}
