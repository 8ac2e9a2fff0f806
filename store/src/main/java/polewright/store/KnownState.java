package polewright.store;

import java.util.Optional;
import java.util.OptionalLong;
import polewright.session.NightId;

/**
 * The state of the log known to the sender of an event. If the log has changed since, the event could do something
 * unintended: take back another night's event, or record that advice was followed which is no longer given.
 *
 * @param night the latest night; empty if any
 * @param lastSeq the number of its last event; empty if any
 */
public record KnownState(Optional<NightId> night, OptionalLong lastSeq) {
    /** Any state of the log. */
    public static final KnownState NOTHING = new KnownState(Optional.empty(), OptionalLong.empty());

    /**
     * Compares it with the actual state of the log.
     *
     * @param latest the night begun last
     * @param last the number of its last event
     * @throws LogChanged if either differs
     */
    public void check(NightId latest, long last) {
        if (night.isPresent() && !night.get().equals(latest)) {
            throw LogChanged.toAnotherNight();
        }
        if (lastSeq.isPresent() && lastSeq.getAsLong() != last) {
            throw LogChanged.toAnotherEvent();
        }
    }
}
