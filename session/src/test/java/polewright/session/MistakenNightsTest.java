package polewright.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.alignment.advice.Adviser;
import polewright.alignment.fix.Agreement;
import polewright.alignment.fix.Fix;
import polewright.alignment.fix.Mistake;
import polewright.mount.AxisOffset;
import polewright.session.event.LoggedEvent;
import polewright.session.jsonl.JsonLines;
import polewright.sky.fields.BodyNames;

/**
 * Nights from an independent simulator (exact spherical geometry, refraction by SOFA's models) with one mistake each,
 * and the true axis at their end: authorities/nights.
 */
class MistakenNightsTest {
    // Two degrees of freedom: 95 %.
    private static final double INSIDE = 5.991;

    /**
     * The true axis is inside the region, or the doubt is reported; an axis that is not good enough is never declared
     * so.
     */
    @ParameterizedTest
    @CsvSource({
        "nostop_hours_30018, -88, -80",
        "nostop_latsign_30013, 0.6, -103",
        "stop_outside_hours_30005, -3.4, 4.0",
        "stop_outside_hours_30033, 0.3, 7.6",
        "stop_outside_hours_30036, 1.8, 5.9",
        "stop_outside_wrong_star_30008, -4.8, -2.0",
        "false_alarm_honest_20095, 0.3, -3.8",
        "false_alarm_honest_20155, -2.9, -2.9"
    })
    void trueAxis_isInsideTheRegion_orDoubtIsReported(String night, double east, double up) throws IOException {
        NightState state = NightState.of(events(night));
        AxisOffset wrong = state.fix().state().offset().minus(AxisOffset.ofArcminutes(east, up));
        boolean inside = state.fix().state().offsetCovariance().normalisedSquare(wrong) < INSIDE;
        assertThat(inside || state.fix() instanceof Fix.Dubious).isTrue();
        if (Math.hypot(east, up) > 5.3) {
            assertThat(state.advice().probabilityNow()).isLessThan(Adviser.ENOUGH);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "nostop_hours_30018, the clock was 5 hours slow",
        "stop_outside_hours_30033, the clock was 2 hours slow",
        "nostop_latsign_30013, the site were north of the equator"
    })
    void mistakeOfTheWholeNight_isNamed(String night, String words) throws IOException {
        List<LoggedEvent> events = events(night);
        boolean named = false;
        NightState.ModelCache models = new NightState.ModelCache();
        for (int i = 1; i <= events.size() && !named; i++) {
            Fix fix = NightState.of(events.subList(0, i), events.get(i - 1).at(), models)
                    .fix();
            named = fix.explanations().get(0).weight() > 0.95
                    && fix.explanations().get(0).mistake().map(Mistake::words).equals(Optional.of(words));
        }
        assertThat(named).isTrue();
    }

    @ParameterizedTest
    @CsvSource({"false_alarm_honest_20095", "false_alarm_honest_20155"})
    void nightWithoutMistakes_namesNone(String night) throws IOException {
        Fix fix = NightState.of(events(night)).fix();
        assertThat(fix).isInstanceOf(Fix.Solved.class);
        assertThat(fix.agreements()).noneMatch(Agreement::contradictory);
    }

    /** Event 6 is the drift of a star on the other side of the meridian. */
    @Test
    void starOnTheOtherSide_isNamedAsTheOneSighted() throws IOException {
        Fix fix = NightState.of(events("nostop_wrong_side_30024")).fix();
        assertThat(fix.agreement(6).orElseThrow().likelyCause().orElseThrow()).startsWith("the star was ");
    }

    private static List<LoggedEvent> events(String night) throws IOException {
        try (InputStream in = Objects.requireNonNull(
                MistakenNightsTest.class.getResourceAsStream("/authorities/nights/" + night + ".jsonl"))) {
            return JsonLines.readNights(new InputStreamReader(in, StandardCharsets.UTF_8), BodyNames.NONE)
                    .get(0);
        }
    }
}
