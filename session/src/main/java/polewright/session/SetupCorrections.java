package polewright.session;

import java.util.ArrayList;
import java.util.List;
import polewright.alignment.sighting.OpticCorrection;
import polewright.alignment.sighting.Sighting;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;
import polewright.session.event.Correction;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;

/**
 * Applies corrections of the rig and the site, as if the night had begun with the corrected ones. Anything derived from
 * the wrong ones when a sighting was logged is derived again from the right ones. The same applies to whatever was
 * logged under a correction that was withdrawn later.
 */
final class SetupCorrections {
    private SetupCorrections() {}

    /**
     * The events with rig and site corrected, without the corrections themselves.
     *
     * @param standing the events not withdrawn, the beginning first
     * @param history of the night's setup, from {@link #history}
     * @throws InputRefused if the corrected rig or site is impossible; the message names the event number
     */
    static List<LoggedEvent> applied(List<LoggedEvent> standing, List<LoggedEvent> history) {
        if (history.isEmpty() || standing.isEmpty() || !(standing.get(0).event() instanceof NightEvent.Begun entered)) {
            return standing;
        }
        NightEvent.Begun corrected = entered;
        for (LoggedEvent logged : standing) {
            corrected = after(logged, corrected);
        }
        List<LoggedEvent> applied = new ArrayList<>();
        NightEvent.Begun then = entered;
        int known = 0;
        for (LoggedEvent logged : standing) {
            int before = known;
            while (known < history.size() && history.get(known).seq() < logged.seq()) {
                known++;
            }
            then = known == before ? then : standingThen(history.subList(0, known), entered);
            if (logged.event() instanceof NightEvent.Begun) {
                applied.add(new LoggedEvent(logged.seq(), logged.at(), corrected));
            } else if (!corrects(logged)) {
                NightEvent.Begun entry = then;
                NightEvent.Begun now = corrected;
                NightEvent read = logged.event().withSighting(sighting -> read(sighting, entry, now));
                applied.add(read.equals(logged.event()) ? logged : new LoggedEvent(logged.seq(), logged.at(), read));
            }
        }
        return applied;
    }

    /**
     * The events that determine with which rig and site each event was entered: corrections, withdrawn or not, and all
     * withdrawals; empty if nothing was corrected.
     */
    static List<LoggedEvent> history(List<LoggedEvent> events) {
        return events.stream().noneMatch(SetupCorrections::corrects)
                ? List.of()
                : events.stream()
                        .filter(logged -> corrects(logged) || logged.event() instanceof NightEvent.Withdrawn)
                        .toList();
    }

    private static NightEvent.Begun standingThen(List<LoggedEvent> history, NightEvent.Begun entered) {
        NightEvent.Begun then = entered;
        for (LoggedEvent logged : StandingEvents.counting(history)) {
            try {
                then = after(logged, then);
            } catch (InputRefused withdrawnForThat) {
                // It changed neither rig nor site, so nothing depends on it.
            }
        }
        return then;
    }

    private static boolean corrects(LoggedEvent logged) {
        return logged.event() instanceof Correction.SetupCorrection;
    }

    private static NightEvent.Begun after(LoggedEvent logged, NightEvent.Begun before) {
        try {
            return logged.event() instanceof Correction.SetupCorrection correction
                    ? correction.appliedTo(before)
                    : before;
        } catch (InputRefused refused) {
            throw refused.at("event " + logged.seq());
        }
    }

    private static Sighting read(Sighting sighting, NightEvent.Begun then, NightEvent.Begun now) {
        return through(sighting.atCorrectedSite(then.siteCorrectedTo(now)), then.rig(), now.rig());
    }

    private static Sighting through(Sighting sighting, Rig then, Rig now) {
        for (Optic optic : now.optics()) {
            Optic before = then.optic(optic.name()).orElse(optic);
            Sighting read = before.equals(optic)
                    ? sighting
                    : sighting.throughCorrectedOptic(new OpticCorrection(before, optic));
            if (!read.equals(sighting)) {
                return read;
            }
        }
        return sighting;
    }
}
