package polewright.session;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import polewright.alignment.fix.Step;
import polewright.mount.pointing.CentredStar;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;

/**
 * Stars centred since the axis last moved, while a night's events are gone through in order. Together they are one sighting;
 * it stands where the last of them does, before the move that ends it.
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

    /** Takes in an event; what those before it come to, if it moves the axis and so ends them. */
    Optional<Step.Sighted> before(LoggedEvent logged, NightEvent.Begun begun, NightState.ModelCache models) {
        if (logged.event() instanceof NightEvent.StarCentred star) {
            stars.add(star.centred());
            lastSeq = logged.seq();
            return Optional.empty();
        }
        if (!(logged.event() instanceof NightEvent.MountMove)) {
            return Optional.empty();
        }
        Optional<Step.Sighted> ended = atLast(begun, models);
        stars.clear();
        return ended;
    }

    /** What those since the last move come to. */
    Optional<Step.Sighted> atLast(NightEvent.Begun begun, NightState.ModelCache models) {
        return models.centred(stars, begun).map(together -> models.step(lastSeq, together, begun));
    }
}
