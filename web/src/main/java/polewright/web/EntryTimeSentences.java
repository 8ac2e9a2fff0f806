package polewright.web;

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
import polewright.web.form.NightForms;

/** What is odd about the time of an event, with the form that corrects it. */
final class EntryTimeSentences implements EntryTimeCheck.Visitor<String> {
    private static final EntryTimeSentences SENTENCES = new EntryTimeSentences();
    private static final String ANOTHER_NIGHT =
            " If tonight is another night, take this back and use '" + NightForms.BEGIN.title() + "'.";
    private static final String RETIME = "'" + NightForms.RETIME.title() + "'";

    private EntryTimeSentences() {}

    static String of(Finding finding) {
        return finding.accept(SENTENCES);
    }

    @Override
    public String longPause(LongPause pause) {
        return "This is " + pause.pause().toHours() + " hours after #"
                + pause.last().seq() + " (" + minute(pause.last().at()) + ")." + ANOTHER_NIGHT
                + " If the laptop's clock was ahead, set it right, then subtract the difference from event number "
                + pause.next() + " on, with " + RETIME + ".";
    }

    @Override
    public String oldNight(OldNight old) {
        return "This night began at " + minute(old.begunAt()) + "." + ANOTHER_NIGHT;
    }

    @Override
    public String inFuture(InFuture future) {
        return minute(future.given()) + " is in the future: it is " + minute(future.now())
                + ". Check the clock of this device and that of the laptop.";
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
        return "The laptop's clock shows " + minute(back.now()) + ", but #" + last + " was logged at "
                + minute(back.last().at()) + ". It has been set back by " + back.minutes() + " minutes or more: use "
                + RETIME + ". If it was ahead, subtract " + back.minutes() + " minutes up to event number " + last
                + ". If it is behind now, set it right, then add them from event number " + (last + 1) + " on.";
    }

    private static Instant minute(Instant instant) {
        return instant.truncatedTo(ChronoUnit.MINUTES);
    }
}
