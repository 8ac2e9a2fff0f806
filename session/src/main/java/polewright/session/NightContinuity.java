package polewright.session;

import java.util.Arrays;
import java.util.List;
import polewright.session.event.LoggedEvent;

/** Whether one night's events start with those of an earlier call. */
final class NightContinuity {
    private NightContinuity() {}

    /** Whether a night begins with exactly these events. */
    static boolean startsWith(List<LoggedEvent> first, List<LoggedEvent> night) {
        return night.size() >= first.size()
                // Arrays compare several times faster than nested list views.
                && Arrays.equals(first.toArray(), night.subList(0, first.size()).toArray());
    }
}
