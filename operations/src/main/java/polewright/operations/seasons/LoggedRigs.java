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

/** The rigs of the nights in a log. */
public final class LoggedRigs {
    // A season; a rig unused for longer can be loaded from its file.
    private static final int MOST_NIGHTS = 30;

    private LoggedRigs() {}

    /** Each rig by name in its last state, the latest first. Nights that cannot be read are skipped. */
    public static List<Rig> of(NightLog opened) {
        Map<String, Rig> rigs = new LinkedHashMap<>();
        for (NightSummary night : opened.nights().stream().limit(MOST_NIGHTS).toList()) {
            try {
                StandingEvents.beginning(opened.events(night.id()))
                        .ifPresent(begun -> rigs.putIfAbsent(begun.rig().name().toLowerCase(Locale.ROOT), begun.rig()));
            } catch (InputRefused damaged) {
                // The night stays in the log unchanged.
            }
        }
        return List.copyOf(rigs.values());
    }
}
