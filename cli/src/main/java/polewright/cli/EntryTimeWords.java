package polewright.cli;

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

/** What is odd about the time of an event, with what to type about it. */
final class EntryTimeWords implements EntryTimeCheck.Visitor<String> {
    private static final EntryTimeWords WORDS = new EntryTimeWords();

    private EntryTimeWords() {}

    static String of(Finding finding) {
        return finding.accept(WORDS);
    }

    @Override
    public String longPause(LongPause pause) {
        return "this is " + pause.pause().toHours() + " hours after #"
                + pause.last().seq() + " (" + minute(pause.last().at())
                + "). If tonight is another night, undo this and type polewright begin. If the computer's"
                + " clock was ahead, set it right, then subtract the difference: polewright retime "
                + pause.next() + " --add=-MINUTES.";
    }

    @Override
    public String oldNight(OldNight old) {
        return "this night began at " + minute(old.begunAt())
                + ". If tonight is a new night, undo this and type polewright begin.";
    }

    @Override
    public String inFuture(InFuture future) {
        return minute(future.given()) + " is in the future (it is " + minute(future.now())
                + "): check the date and the zone.";
    }

    @Override
    public String beforeAnotherEvent(BeforeAnotherEvent earlier) {
        return "treated as done after #" + earlier.seq() + " (" + minute(earlier.at())
                + "), because it was logged later. The time you gave is earlier.";
    }

    @Override
    public String beforeAMove(BeforeAMove earlier) {
        return "treated as seen after #" + earlier.seq() + " moved the axis (" + minute(earlier.at())
                + "), because it was logged later. The time you gave is earlier.";
    }

    @Override
    public String clockSetBack(ClockSetBack back) {
        long minutes = back.minutes();
        long last = back.last().seq();
        return "the computer's clock says " + minute(back.now()) + ", yet #" + last + " was logged at "
                + minute(back.last().at()) + ". It has been set back by " + minutes
                + " minutes or more. If it was ahead, subtract " + minutes + " minutes from everything up to #" + last
                + ": polewright retime FIRST " + last + " --add=-" + minutes
                + ". If it is behind now, set it right, then add " + minutes + " minutes from #" + (last + 1)
                + " on: polewright retime " + (last + 1) + " --add " + minutes + ".";
    }

    private static Instant minute(Instant instant) {
        return instant.truncatedTo(ChronoUnit.MINUTES);
    }
}
