package polewright.session.event;

import java.util.List;
import java.util.TreeSet;
import java.util.function.LongPredicate;
import polewright.sky.InputRefused;

/**
 * The rules for the order of a night's events: the beginning comes first, with number 1, and only once; numbers
 * increase; and only earlier events are withdrawn.
 */
public final class EventOrder {
    /** More events than any night has; larger numbers are mistakes. */
    public static final long LARGEST_SEQ = 1_000_000_000;

    private EventOrder() {}

    /** Refuses a whole night that breaks the order. */
    public static void check(List<LoggedEvent> night) {
        if (night.isEmpty()) {
            throw new InputRefused("there is no event", "the first must be a begin");
        }
        TreeSet<Long> earlier = new TreeSet<>();
        for (LoggedEvent event : night) {
            checkNext(event, earlier.isEmpty() ? 0 : earlier.last(), earlier::contains);
            earlier.add(event.seq());
        }
    }

    /**
     * Refuses an event that cannot follow.
     *
     * @param lastSeq number of the event before, 0 if there is none
     * @param happened whether there is an earlier event with a number
     */
    public static void checkNext(LoggedEvent next, long lastSeq, LongPredicate happened) {
        boolean begins = next.event() instanceof NightEvent.Begun;
        if (lastSeq == 0 && !begins) {
            throw new InputRefused(
                    "the first event is a " + EventKind.of(next.event()).word(),
                    "begin the night first: site, rig and allowance");
        }
        if (lastSeq > 0 && begins) {
            throw new InputRefused(
                    "event " + next.seq() + " begins a night that has already begun",
                    "keep each night in a file of" + " its own");
        }
        if (begins && next.seq() != 1) {
            throw new InputRefused("seq " + next.seq() + " of the begin is not 1", "number the events from 1");
        }
        if (next.seq() <= lastSeq) {
            throw new InputRefused(
                    "seq " + next.seq() + " does not come after " + lastSeq,
                    "number the events upward, or leave seq out");
        }
        if (next.seq() > LARGEST_SEQ) {
            throw new InputRefused(
                    "seq " + next.seq() + " is beyond " + LARGEST_SEQ, "number the events from 1, or leave seq out");
        }
        if (next.event() instanceof NightEvent.Revision revision) {
            if (revision instanceof NightEvent.Withdrawn && revision.seq() == NightEvent.BEGIN_SEQ) {
                throw new InputRefused(
                        "event 1 cannot be taken back because it begins the night",
                        "begin a new night instead; this one stays in the log");
            }
            revision.refersTo().forEach(earlier -> checkHappened(earlier, next.seq(), happened));
        }
    }

    private static void checkHappened(long earlier, long own, LongPredicate happened) {
        if (earlier >= own || !happened.test(earlier)) {
            throw new InputRefused(
                    "there is no earlier event " + earlier + " in this night", "give the number of an earlier event");
        }
    }
}
