package polewright.report.text;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import polewright.session.EntryTimeCheck;
import polewright.session.EntryTimeCheck.BeforeAMove;
import polewright.session.EntryTimeCheck.BeforeAnotherEvent;
import polewright.session.EntryTimeCheck.ClockSetBack;
import polewright.session.EntryTimeCheck.Finding;
import polewright.session.EntryTimeCheck.InFuture;
import polewright.session.EntryTimeCheck.LongPause;
import polewright.session.EntryTimeCheck.OldNight;

/** What is odd about the time of an event, and what to do about it. Actions are named in braces. */
final class EntryTimeWords implements EntryTimeCheck.Visitor<String> {
    private static final EntryTimeWords WORDS = new EntryTimeWords();
    private static final String ANOTHER_NIGHT =
            " If tonight is another night, undo this ({do:undo}), then use {do:begin}.";

    private EntryTimeWords() {}

    static String of(Finding finding) {
        return finding.accept(WORDS);
    }

    @Override
    public String longPause(LongPause pause) {
        return "This is " + pause.pause().toHours() + " hours after #"
                + pause.last().seq() + " (" + minute(pause.last().at()) + ")." + ANOTHER_NIGHT
                + " If the computer's clock was ahead, set it right, then subtract the difference from #" + pause.next()
                + " on: {do:retime first=" + pause.next() + " add=-…}.";
    }

    @Override
    public String oldNight(OldNight old) {
        return "This night began at " + minute(old.begunAt()) + "." + ANOTHER_NIGHT;
    }

    @Override
    public String inFuture(InFuture future) {
        return minute(future.given()) + " is in the future (it is " + minute(future.now())
                + "). Check its date and zone, and the clock.";
    }

    @Override
    public String beforeAnotherEvent(BeforeAnotherEvent earlier) {
        return "Treated as done after #" + earlier.seq() + " (" + minute(earlier.at())
                + "), because it was logged later, although its time is earlier.";
    }

    @Override
    public String beforeAMove(BeforeAMove earlier) {
        return "Treated as seen after #" + earlier.seq() + " moved the axis (" + minute(earlier.at())
                + "), because it was logged later, although its time is earlier.";
    }

    @Override
    public String clockSetBack(ClockSetBack back) {
        long last = back.last().seq();
        return "The computer's clock shows " + minute(back.now()) + ", but #" + last + " was logged at "
                + minute(back.last().at()) + ". It has been set back by " + back.minutes()
                + " minutes or more. If it was ahead, subtract " + back.minutes() + " minutes from everything up to #"
                + last + ": {do:retime last=" + last + " add=-" + back.minutes()
                + "}. If it is behind now, set it right, then add " + back.minutes() + " minutes from #" + (last + 1)
                + " on: {do:retime first=" + (last + 1) + " add=" + back.minutes() + "}.";
    }

    private static Instant minute(Instant instant) {
        return instant.truncatedTo(ChronoUnit.MINUTES);
    }
}
