package polewright.app.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import polewright.axis.rig.Experience;
import polewright.axis.rig.Rig;
import polewright.night.RigHistory;
import polewright.night.event.LoggedEvent;
import polewright.night.log.NightLog;
import polewright.night.log.NightSummary;
import polewright.sky.InputRefused;
import polewright.sky.place.Site;

/** What the last nights in a log have taught of a rig. */
final class EarlierNights {
    // A season of nights; older ones are of a mount that has worn since.
    private static final int MOST = 30;

    private EarlierNights() {}

    /**
     * The rig with what the log's nights of its name have taught; with what it brought, when they taught nothing. A night
     * that cannot be read keeps nobody from beginning another.
     */
    static Rig taught(Rig rig, Site tonight, NightLog opened) {
        List<List<LoggedEvent>> nights = new ArrayList<>();
        for (NightSummary night : opened.nights().stream().limit(MOST).toList()) {
            try {
                nights.add(opened.events(night.id()));
            } catch (InputRefused damaged) {
                // It stays in the log as it is.
            }
        }
        Optional<Experience> learned = RigHistory.experience(nights, rig, tonight);
        return learned.isPresent() ? rig.withExperience(learned) : rig;
    }
}
