package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.operations.CommandRun;
import polewright.session.StandingEvents;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.store.NightLog;

/** The computer's clock jumps back by an hour between two events. */
class ClockSetBackTest {
    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeEach
    void logByAClockThatIsSetBack() {
        person = new CommandRun(folder, "2026-01-15T21:00:00Z");
        person.good("begin", "--site", "54.60,-2.90,240", "--name", "Larkfell");
        person.good("sight", "compass", "1");
        person.waitMinutes(-60);
    }

    private List<String> times() {
        try (NightLog opened = NightLog.open(person.log())) {
            List<LoggedEvent> events = opened.events(opened.latest().orElseThrow());
            return StandingEvents.among(events).asMeant().stream()
                    .map(event -> event.at().toString().substring(11, 16)
                            + (event.event() instanceof NightEvent.Measurement measured
                                    ? " seen " + measured.seenAt().toString().substring(11, 16)
                                    : ""))
                    .toList();
        }
    }

    private String output(String... words) {
        return person.good(words).out().replaceAll("\\n +", " ");
    }

    @Test
    void backwardJump_isReportedWithBothCorrections() {
        assertThat(output("sight", "scale", "54.5"))
                .contains("NOTE  The computer's clock shows 2026-01-15T20:00:00Z, but #2 was logged at"
                        + " 2026-01-15T21:00:00Z. It has been set back by 60 minutes or more. If it was ahead,"
                        + " subtract 60 minutes from everything up to #2: polewright retime --add=-60 … 2. If it is"
                        + " behind now, set it right, then add 60 minutes from #3 on: polewright retime --add=60 3.");
        assertThat(output("note", "typed later", "--at", "2026-01-15T20:30Z")).doesNotContain("has been set back");
    }

    /** In this test the clock was an hour ahead for #2. */
    @Test
    void forwardJump_isReportedFromTwelveHours() {
        person.waitMinutes(60 + 12 * 60 - 1);
        assertThat(output("note", "dew")).doesNotContain("hours after");
        person.waitMinutes(13 * 60);
        assertThat(output("note", "frost"))
                .contains(
                        "NOTE  This is 13 hours after #3 (",
                        "Z). If tonight is another night, undo this (polewright undo), then use polewright begin. If the"
                                + " computer's clock was ahead, set it right, then subtract the difference from #4 on:"
                                + " polewright retime --add=-… 4.");
        assertThat(output("note", "typed", "--at", "2026-01-17T23:00Z")).doesNotContain("hours after");
    }

    @Test
    void eventsFromAClockAhead_areCorrected_andTheWarningEnds() {
        person.good("retime", "1", "2", "--add=-60");
        assertThat(times()).containsExactly("20:00", "20:00 seen 20:00");
        assertThat(output("note", "dew")).doesNotContain("has been set back");
        assertThat(person.good("log").out()).contains("clock corrected for #1 to #2: −60 minutes");
    }

    @Test
    void eventsFromAClockBehind_areCorrected_exceptTypedTimes_andUndoRestoresThem() {
        person.good("sight", "scale", "54.5");
        person.good("sight", "shadow", "--at", "2026-01-15T12:00Z", "--", "5");
        person.good(
                "sight", "drift", "capella", "--minutes", "5", "--moved", "3", "--unit", "arcsec", "--toward", "south");
        person.waitMinutes(70);
        person.good("retime", "3", "--add", "60");
        assertThat(times())
                .containsExactly(
                        "21:00", "21:00 seen 21:00", "21:00 seen 21:00", "21:00 seen 12:00", "21:00 seen 20:55");
        person.good("undo");
        assertThat(times())
                .containsExactly(
                        "21:00", "21:00 seen 21:00", "20:00 seen 20:00", "20:00 seen 12:00", "20:00 seen 19:55");
    }

    @Test
    void nonsensicalCorrection_isRefused() {
        assertThat(person.run("retime", "2", "1", "--add", "5").complaint())
                .isEqualTo("polewright retime: event 1 is not after event 2. Give the first, then the last.");
        assertThat(person.run("retime", "7", "--add", "5").status()).isNotZero();
        assertThat(person.run("retime", "2", "--add", "0").complaint()).contains("a clock error of 0 minutes");
        assertThat(person.events()).isEqualTo(2);
    }

    @Test
    void dates_areShown_ifEventsSpanSeveralDays() {
        assertThat(person.good("log").lines().get(0)).startsWith("#1   21:00 UTC  ");
        person.waitMinutes(6 * 60);
        person.good("note", "frost");
        assertThat(person.good("log").out()).contains("#1   2026-01-15 21:00 UTC  ", "#3   2026-01-16 02:00 UTC  ");
    }
}
