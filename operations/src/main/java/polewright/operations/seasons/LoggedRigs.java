package polewright.operations.seasons;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import polewright.mount.rig.Rig;
import polewright.session.NightSummary;
import polewright.session.StandingEvents;
import polewright.sky.InputRefused;
import polewright.store.NightLog;

/** The rigs of a log's nights. */
public final class LoggedRigs {
    // A season; a rig that was not used for so long is found in its file.
    private static final int MOST_NIGHTS = 30;

    private LoggedRigs() {}

    /** Each by its name as it was in its last night, the latest first. A night that cannot be read has none. */
    public static List<Rig> of(NightLog opened) {
        Map<String, Rig> rigs = new LinkedHashMap<>();
        for (NightSummary night : opened.nights().stream().limit(MOST_NIGHTS).toList()) {
            try {
                StandingEvents.beginning(opened.events(night.id()))
                        .ifPresent(begun -> rigs.putIfAbsent(begun.rig().name().toLowerCase(Locale.ROOT), begun.rig()));
            } catch (InputRefused damaged) {
                // It stays in the log as it is.
            }
        }
        return List.copyOf(rigs.values());
    }
}
