package polewright.operations.action;

import polewright.alignment.sighting.Sighting;
import polewright.session.ImplausibleReading;
import polewright.sky.place.Site;

/** An entry can be used but looks like a mistake: nothing is logged until it is confirmed. */
public final class LooksMistaken extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient Doubt doubt;

    public LooksMistaken(Doubt doubt) {
        super("the entry looks like a mistake");
        this.doubt = doubt;
    }

    public Doubt doubt() {
        return doubt;
    }

    /** Why it looks like one. */
    public sealed interface Doubt permits Doubt.FarOff, Doubt.ManyTurns, EntryNotice.OddSite {
        /** The axis would be farther off than any mount is set up. */
        record FarOff(Sighting sighting, ImplausibleReading reading, Site site) implements Doubt {}

        /**
         * More turns than most wedges have.
         *
         * @param screw {@code azimuth} or {@code altitude}
         */
        record ManyTurns(String screw, double turns) implements Doubt {}
    }
}
