package polewright.operations.seasons;

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

/**
 * What the nights of a log say about a rig or a site. Nights are read on demand, while the log is open. A night that cannot be read is skipped and stays in the log.
 */
public final class EarlierNights {
    // A season of nights; the mount has worn since older ones.
    private static final int MOST = 30;

    private final NightLog opened;
    private final Optional<NightId> excluded;

    private EarlierNights(NightLog opened, Optional<NightId> excluded) {
        this.opened = opened;
        this.excluded = excluded;
    }

    /** All nights of a log. */
    public static EarlierNights of(NightLog opened) {
        return new EarlierNights(opened, Optional.empty());
    }

    /** All but this one, whose own events do not count. */
    public static EarlierNights except(NightId night, NightLog opened) {
        return new EarlierNights(opened, Optional.of(night));
    }

    /** Each rig by name in its last state, that of the present night included, the latest first. */
    public List<Rig> rigs() {
        return LoggedRigs.of(opened);
    }

    /** The skyline last given for this site, if any. */
    public Optional<Horizon> skyline(Site site) {
        for (NightSummary night : nights()) {
            try {
                List<LoggedEvent> standing =
                        StandingEvents.among(opened.events(night.id())).asMeant();
                boolean isHere = !standing.isEmpty()
                        && standing.get(0).event() instanceof NightEvent.Begun begun
                        && begun.site().equals(site);
                Optional<Horizon> given = isHere ? NightState.horizonSet(standing) : Optional.empty();
                if (given.isPresent()) {
                    return given;
                }
            } catch (InputRefused damaged) {
                // It stays in the log as it is.
            }
        }
        return Optional.empty();
    }

    /**
     * The rig with the experience of the nights under its name, or with its own experience if they give none. An
     * imported copy of a night adds nothing.
     */
    public Rig experienced(Rig rig, Site tonight) {
        Map<String, List<LoggedEvent>> nights = new LinkedHashMap<>();
        for (NightSummary night : nights()) {
            try {
                List<LoggedEvent> events = opened.events(night.id());
                nights.putIfAbsent(events.stream().map(JsonLines::write).collect(Collectors.joining("\n")), events);
            } catch (InputRefused damaged) {
                // It stays in the log as it is.
            }
        }
        return RigHistory.withExperience(List.copyOf(nights.values()), rig, tonight);
    }

    private List<NightSummary> nights() {
        return opened.nights().stream()
                .filter(night -> excluded.filter(night.id()::equals).isEmpty())
                .limit(MOST)
                .toList();
    }
}
