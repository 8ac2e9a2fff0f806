package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.fix.Mistake;
import polewright.alignment.fix.Step;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.Misreading;
import polewright.mount.rig.HandTurns;
import polewright.mount.rig.Rig;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

class RemedyWordsTest {
    private static final Instant EVENING = Instant.parse("2026-01-15T20:00:00Z");
    private static final Site LARKFELL = Site.ofDegrees(54.60, -2.90, 240);
    private static final LevelledScale SCALE =
            new LevelledScale(EVENING, Angle.ofDegrees(35.4), LevelledScale.USUAL_SIGMA);

    private static final NightState NIGHT = NightState.of(List.of(
            new LoggedEvent(
                    1,
                    EVENING,
                    new NightEvent.Begun(
                            "Larkfell",
                            LARKFELL,
                            Weather.standardAt(240),
                            Rig.typicalForkOnWedge(),
                            DiscAllowance.VISUAL)),
            new LoggedEvent(2, EVENING, new NightEvent.SightingTaken(SCALE))));

    @Test
    void correctedSite_keepsItsHeight() {
        Mistake swapped = new Mistake.SiteWrong(LARKFELL, "latitude and longitude were swapped");

        assertThat(RemedyWords.command(swapped, NIGHT)).isEqualTo("polewright site correct --site=54.6,-2.9,240");
    }

    /** The scale was read from its other end: the command holds the reading that was meant. */
    @Test
    void misreadSighting_isReplacedByWhatWasMeant() {
        Misreading other = SCALE.misreadings().get(0);
        LevelledScale meant = (LevelledScale) other.meant();

        assertThat(RemedyWords.command(new Mistake.SightingMisread(2, meant, other.cause()), NIGHT))
                .startsWith("polewright sight scale ")
                .contains("--instead-of=2")
                .contains(" " + Double.toString(meant.altitude().degrees()).substring(0, 4));
    }

    @Test
    void turnTheOtherWay_isEnteredAsMade() {
        Mistake reversed = new Mistake.TurnMistaken(
                3, new Step.Turned(3, new HandTurns(-1.5, 0.5), HandTurns.NONE), "it went the opposite way");

        assertThat(RemedyWords.command(reversed, NIGHT))
                .isEqualTo("polewright turn --azimuth='2 ccw then 0.5 cw' --instead-of=3");
    }

    @Test
    void slippedScrew_isEnteredWithTheTurnsThatWereMade() {
        Mistake slipped = new Mistake.TurnMistaken(
                3, new Step.TurnedUnlogged(3, 0.1, 0), "the azimuth screw slipped by part of a turn");

        assertThat(RemedyWords.command(slipped, NIGHT))
                .isEqualTo("enter the turns that were made: polewright turn --instead-of=3");
    }

    @Test
    void sightingWithoutAnotherReading_isEnteredAgain() {
        assertThat(RemedyWords.command(new Mistake.SightingMisread(2, SCALE, "another cause"), NIGHT))
                .isEqualTo("enter it again, with --instead-of=2");
    }

    /** The same mistake in several sightings has no single correction. */
    @Test
    void habit_namesItsSightings() {
        Mistake habit = new Mistake.HabitualMistake(
                List.of(new Mistake.SightingMisread(2, SCALE, "x"), new Mistake.SightingMisread(5, SCALE, "x")),
                "the scale was read from its other end");

        assertThat(RemedyWords.command(habit, NIGHT))
                .isEqualTo("enter each of #2, #5 again, with --instead-of and its number");
    }
}
