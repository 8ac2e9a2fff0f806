package polewright.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import polewright.mount.rig.Rig;
import polewright.session.NightId;
import polewright.session.NightState;
import polewright.session.NightSummary;
import polewright.session.RigHistory;
import polewright.session.StandingEvents;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.session.jsonl.JsonLines;
import polewright.sky.InputRefused;
import polewright.sky.place.Horizon;
import polewright.sky.place.Site;
import polewright.store.NightLog;

/** The experience with a rig from the last nights in a log. */
final class EarlierNights {
    // A season of nights; the mount has worn since older ones.
    private static final int MOST = 30;

    private EarlierNights() {}

    /** The skyline last given for this site, if any. A night that cannot be read gives none. */
    static Optional<Horizon> skyline(Site site, NightLog opened) {
        for (NightSummary night : opened.nights().stream().limit(MOST).toList()) {
            try {
                List<LoggedEvent> standing =
                        StandingEvents.among(opened.events(night.id())).asMeant();
                boolean isHere = !standing.isEmpty()
                        && standing.get(0).event() instanceof NightEvent.Begun begun
                        && begun.site().equals(site);
                Optional<Horizon> told = isHere ? NightState.horizonSet(standing) : Optional.empty();
                if (told.isPresent()) {
                    return told;
                }
            } catch (InputRefused damaged) {
                // It stays in the log as it is.
            }
        }
        return Optional.empty();
    }

    /**
     * The rig with the experience of the log's nights under its name, or with its own experience if they give none. A
     * night that cannot be read does not prevent another from beginning; an imported copy of a night adds nothing.
     */
    static Rig taught(Rig rig, Site tonight, NightLog opened) {
        return taught(rig, tonight, opened, opened.nights());
    }

    /** The same for a night that has begun: its own events do not count. */
    static Rig withEarlierExperience(NightId night, Rig rig, Site tonight, NightLog opened) {
        return taught(
                rig,
                tonight,
                opened,
                opened.nights().stream()
                        .filter(other -> !other.id().equals(night))
                        .toList());
    }

    private static Rig taught(Rig rig, Site tonight, NightLog opened, List<NightSummary> earlier) {
        Map<String, List<LoggedEvent>> nights = new LinkedHashMap<>();
        for (NightSummary night : earlier.stream().limit(MOST).toList()) {
            try {
                List<LoggedEvent> events = opened.events(night.id());
                nights.putIfAbsent(events.stream().map(JsonLines::write).collect(Collectors.joining("\n")), events);
            } catch (InputRefused damaged) {
                // It stays in the log as it is.
            }
        }
        return RigHistory.withExperience(List.copyOf(nights.values()), rig, tonight);
    }
}
