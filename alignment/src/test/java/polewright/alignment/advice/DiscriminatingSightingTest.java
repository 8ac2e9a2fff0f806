package polewright.alignment.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static polewright.alignment.advice.AdviceSituations.axis;
import static polewright.alignment.advice.AdviceSituations.fix;
import static polewright.alignment.advice.AdviceSituations.unclamped;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.alignment.advice.Advice.TakeSighting;
import polewright.alignment.advice.Advice.TurnScrews;
import polewright.alignment.fix.AxisState;
import polewright.alignment.fix.Explanation;
import polewright.alignment.fix.Fix;
import polewright.alignment.fix.KnownAxis;
import polewright.alignment.fix.Mistake;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.LevelledScale;
import polewright.sky.angle.Angle;
import polewright.sky.time.SiderealRate;

/** A dispute in which one explanation is a clock wrong by two hours. */
class DiscriminatingSightingTest {
    private static final Mistake TWO_HOURS_SLOW =
            new Mistake.ClockWrong(Duration.ofHours(2), "the clock was 2 hours slow");
    private static final double TURNED = SiderealRate.during(2 * 3600).radians();
    // The pole star is outside the finder's field.
    private static final double EAST = -150;
    private static final double UP = 90;

    /**
     * A clock error rotates every drift result about the pole by the same angle, so no star can reveal it; turning a
     * screw can.
     */
    @ParameterizedTest
    @ValueSource(doubles = {54.6, -43.95})
    void placesThatDifferByAClockRotation_areSeparatedByATurn_notByMoreDrifts(double latitudeDeg) {
        double east = EAST * Math.cos(TURNED) - UP * Math.sin(TURNED);
        double up = EAST * Math.sin(TURNED) + UP * Math.cos(TURNED);

        assertThat(advice(latitudeDeg, east, up)).isInstanceOf(TurnScrews.class);
    }

    @ParameterizedTest
    @ValueSource(doubles = {54.6, -43.95})
    void placesThatDifferInAnotherWay_areSeparatedByASighting(double latitudeDeg) {
        double east = EAST * Math.cos(TURNED) + UP * Math.sin(TURNED);
        double up = -EAST * Math.sin(TURNED) + UP * Math.cos(TURNED);

        assertThat(advice(latitudeDeg, east, up)).isInstanceOf(TakeSighting.class);
    }

    private static Advice advice(double latitudeDeg, double east, double up) {
        Fix asEntered = seen(latitudeDeg, EAST, UP);
        AxisState byTheClock = seen(latitudeDeg, east, up).state();
        return Adviser.advise(unclamped(
                new Fix.Dubious(
                        asEntered.state(),
                        asEntered.rig(),
                        asEntered.senses(),
                        asEntered.scatter(),
                        asEntered.agreements(),
                        List.of(
                                new Explanation(Optional.empty(), Set.of(), 0.7, asEntered.state()),
                                new Explanation(Optional.of(TWO_HOURS_SLOW), Set.of(), 0.3, byTheClock)),
                        "the entries of the night contradict each other",
                        Fix.Dispute.THE_AXIS),
                true,
                true));
    }

    private static Fix seen(double latitudeDeg, double east, double up) {
        KnownAxis known = axis(latitudeDeg, east, up);
        Angle read = Angle.ofArcseconds(6);
        return fix(
                known,
                known.compass(CompassBearing.USUAL_SIGMA),
                known.scale(LevelledScale.USUAL_SIGMA),
                known.driftOnMeridian(5, read),
                known.driftInEast(5, read));
    }
}
