package polewright.session;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import polewright.alignment.fix.Step;
import polewright.mount.pointing.CentredStar;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;

/**
 * The stars centred since the axis last moved, accumulated event by event. Together they are one sighting, placed at
 * the last centring before the move that ends it.
 */
final class CentringsSoFar {
    private final List<CentredStar> stars = new ArrayList<>();
    private long lastSeq;

    CentringsSoFar copy() {
        CentringsSoFar copy = new CentringsSoFar();
        copy.stars.addAll(stars);
        copy.lastSeq = lastSeq;
        return copy;
    }

    /** Adds an event; returns the sighting completed by it if it moves the axis. */
    Optional<Step.Sighted> before(LoggedEvent logged, NightEvent.Begun begun, NightState.ModelCache models) {
        if (logged.event() instanceof NightEvent.StarCentred star) {
            stars.add(star.centred());
            lastSeq = logged.seq();
            return Optional.empty();
        }
        if (!(logged.event() instanceof NightEvent.MountMove)) {
            return Optional.empty();
        }
        Optional<Step.Sighted> ended = current(begun, models);
        stars.clear();
        return ended;
    }

    /** The sighting from those since the last move. */
    Optional<Step.Sighted> current(NightEvent.Begun begun, NightState.ModelCache models) {
        return models.centred(stars, begun).map(together -> models.step(lastSeq, together, begun));
    }
}
