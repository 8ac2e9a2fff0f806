package polewright.operations.input;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.mount.rig.HandTurns;
import polewright.report.text.EventWords;
import polewright.session.event.NightEvent;

/** Turns as they are typed. Refused input is in {@code BadInputTest}. */
class TurnsInputTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1.25 | 1.25 | 0",
                "1 1/4 | 1.25 | 0",
                "3/8 ccw | -0.375 | 0",
                "-2 | -2 | 0",
                "2 ccw then 1/2 cw | -1.5 | 0.5",
                "2 ccw, then 1/2 cw | -1.5 | 0.5",
                "1 1/2 CW then 3/8 counter-clockwise | 1.125 | -0.375",
                "-2 then 0.5 | -1.5 | 0.5",
                "1/2 ccw then 1/2 cw | 0 | 0.5"
            })
    void turns_areClockwisePositive(String typed, double net, double back) {
        assertThat(new TurnsInput().convert(typed)).isEqualTo(new HandTurns(net, back));
    }

    @ParameterizedTest
    @CsvSource({"2 ccw then 1/2 cw", "1 1/8 cw then 3/8 ccw"})
    void turnsPastAndBack_areDescribedLegByLeg(String typed) {
        HandTurns turns = new TurnsInput().convert(typed);
        String result = EventWords.of(new NightEvent.ScrewsTurned(turns.net(), 0, turns.back(), 0));
        assertThat(result)
                .isEqualTo("turned azimuth "
                        + typed.replace(" ccw", " turns counter-clockwise")
                                .replace(" cw", " turns clockwise")
                                .replace("1/2 turns", "1/2 turn")
                                .replace("3/8 turns", "3/8 turn"));
    }
}
