package polewright.store;

import java.util.Optional;
import java.util.OptionalLong;
import polewright.session.NightId;

/**
 * What whoever adds an event knew of the log. Where it stands otherwise by then, the event would say something that was
 * not meant: that another night's event is taken back, or that advice was followed which is no longer given.
 *
 * @param night the night that was the last one; empty if it may be any
 * @param lastSeq the number of its last event; empty if it may be any
 */
public record KnownState(Optional<NightId> night, OptionalLong lastSeq) {
    /** Whatever the log holds. */
    public static final KnownState NOTHING = new KnownState(Optional.empty(), OptionalLong.empty());

    /**
     * Compares it with how the log stands.
     *
     * @param latest the night that was begun last
     * @param last the number of its last event
     * @throws LogChanged if that is something else than was known
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
