package polewright.operations.action;

import java.time.ZoneId;
import polewright.alignment.sighting.Sighting;
import polewright.session.DoubtfulSite;
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
    public sealed interface Doubt {
        /** The axis would be farther off than any mount is set up. */
        record FarOff(Sighting sighting, ImplausibleReading reading, Site site) implements Doubt {}

        /**
         * More turns than most wedges have.
         *
         * @param screw {@code azimuth} or {@code altitude}
         */
        record ManyTurns(String screw, double turns) implements Doubt {}

        /**
         * The site does not agree with what else is known about where the person is.
         *
         * @param zone the computer's time zone
         */
        record OddSite(DoubtfulSite site, ZoneId zone) implements Doubt {}
    }
}
