package polewright.web.session;

import java.util.OptionalLong;

/**
 * The outcome of confirming that the screws are where they should be.
 *
 * @param seq the number of the event last logged; empty if nothing was logged
 * @param why why nothing was logged; for the person
 */
public record TurnConfirmation(OptionalLong seq, String why) {
    /** Another event came in between. */
    public static final TurnConfirmation OTHERWISE =
            not("something else was logged since this page was loaded, by another device or a"
                    + " frame. Here is the current state; if you did turn a screw, take another frame.");

    static final TurnConfirmation UNMOVED =
            not("the frames show no screw movement since the last sighting. If you did turn, wait"
                    + " for the next frame, or enter the turns under Sightings.");
    static final TurnConfirmation SOON =
            not("the last frame is still being measured. The turns it shows are logged when it is done.");

    static TurnConfirmation as(long seq) {
        return new TurnConfirmation(OptionalLong.of(seq), "");
    }

    private static TurnConfirmation not(String why) {
        return new TurnConfirmation(OptionalLong.empty(), "Not logged: " + why);
    }
}
