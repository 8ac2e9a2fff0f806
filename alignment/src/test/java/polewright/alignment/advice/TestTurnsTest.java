package polewright.alignment.advice;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.alignment.advice.Advice.TakeSighting;
import polewright.alignment.advice.Advice.TurnScrews;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.fix.Fix;
import polewright.alignment.fix.FixSolver;
import polewright.alignment.fix.KnownAxis;
import polewright.alignment.fix.Step;
import polewright.alignment.fix.ToldRig;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** The first turn of a screw whose direction is unknown. */
class TestTurnsTest {
    private static final Site SITE = Site.ofDegrees(54.60, 0, 240);
    private static final Angle READ = Angle.ofArcseconds(4);
    private static final double MOST_TURNS = 4;

    private static Advice advice(Rig rig, List<Step> steps) {
        Fix fix = FixSolver.solve(SITE, rig, KnownAxis.AIR, steps);
        return Adviser.advise(new Situation(
                fix.rig(),
                fix,
                DiscAllowance.VISUAL,
                false,
                Confirmation.NONE,
                Set.of(SightingKind.COMPASS, SightingKind.LEVEL_AND_SCALE),
                Daylight.NONE));
    }

    private static List<Step> seen(double eastArcmin, double upArcmin) {
        return seen(5, eastArcmin, upArcmin);
    }

    private static List<Step> seen(int minutes, double eastArcmin, double upArcmin) {
        KnownAxis axis = KnownAxis.exactly(SITE, AxisOffset.ofArcminutes(eastArcmin, upArcmin));
        return new ArrayList<>(List.of(
                axis.step(2, axis.driftOnMeridian(minutes, READ)), axis.step(3, axis.driftInEast(minutes, READ))));
    }

    private static double turns(TurnScrews advice, ScrewTurn.Which screw) {
        return advice.turns().stream()
                .filter(turn -> turn.screw() == screw)
                .mapToDouble(ScrewTurn::clockwiseTurns)
                .findFirst()
                .orElse(0);
    }

    @Test
    void describedRig_isTurnedAllTheWay_undescribedRigHalfOfIt() {
        TurnScrews whole = (TurnScrews) advice(ToldRig.typical(), seen(60, -50));
        TurnScrews test = (TurnScrews) advice(Rig.typicalForkOnWedge(), seen(60, -50));

        assertThat(whole.tests()).isEmpty();
        assertThat(test.tests()).containsExactlyInAnyOrder(ScrewTurn.Which.AZIMUTH, ScrewTurn.Which.ALTITUDE);
        for (ScrewTurn.Which screw : ScrewTurn.Which.values()) {
            assertThat(turns(test, screw) / turns(whole, screw)).isBetween(0.45, 0.55);
        }
        assertThat(test.probabilityAfter()).isLessThan(0.3);
    }

    /** Half of the move could not be distinguished from no turn or from a turn the other way. */
    @Test
    void testTurn_nearTheAim_isDetectableButNeverPastTheAim() {
        TurnScrews whole = (TurnScrews) advice(ToldRig.typical(), seen(15, 14, 0));
        TurnScrews test = (TurnScrews) advice(Rig.typicalForkOnWedge(), seen(15, 14, 0));
        double share = turns(test, ScrewTurn.Which.AZIMUTH) / turns(whole, ScrewTurn.Which.AZIMUTH);
        assertThat(share).isGreaterThan(0.55).isLessThanOrEqualTo(1);
    }

    @Test
    void testTurn_farFromTheAim_isEasilyTurnedBack() {
        TurnScrews test = (TurnScrews) advice(Rig.typicalForkOnWedge(), seen(200, -190));
        assertThat(Math.abs(turns(test, ScrewTurn.Which.AZIMUTH))).isLessThanOrEqualTo(MOST_TURNS);
        assertThat(Math.abs(turns(test, ScrewTurn.Which.ALTITUDE))).isLessThanOrEqualTo(MOST_TURNS);
    }

    /** One test and one sighting show the direction; whichever it is, the next order brings the axis nearer. */
    @ParameterizedTest
    @CsvSource({"1, 1", "-1, 1", "1, -1", "-1, -1", "-0.75, -1.25", "1.25, -0.75"})
    void oneSighting_settlesTheDirection_andTheNextOrderIsRight(double azimuthFactor, double altitudeFactor) {
        Rig rig = Rig.typicalForkOnWedge();
        List<Step> steps = seen(60, -50);
        TurnScrews test = (TurnScrews) advice(rig, steps);
        double azimuth = turns(test, ScrewTurn.Which.AZIMUTH);
        double altitude = turns(test, ScrewTurn.Which.ALTITUDE);
        steps.add(new Step.Turned(4, azimuth, altitude));
        KnownAxis turned = turned(
                AxisPointing.of(SITE, AxisOffset.ofArcminutes(60, -50)),
                azimuth * azimuthFactor,
                altitude * altitudeFactor);

        assertThat(advice(rig, steps))
                .isInstanceOfSatisfying(
                        TakeSighting.class,
                        look -> assertThat(look.reason()).isEqualTo("it shows which way the screws move the axis"));

        steps.add(turned.step(5, turned.driftOnMeridian(5, READ)));
        steps.add(turned.step(6, turned.driftInEast(5, READ)));
        TurnScrews next = (TurnScrews) advice(rig, steps);
        assertThat(next.tests()).isEmpty();
        KnownAxis after = turned(
                turned.axis(),
                turns(next, ScrewTurn.Which.AZIMUTH) * azimuthFactor,
                turns(next, ScrewTurn.Which.ALTITUDE) * altitudeFactor);
        assertThat(after.axis().offset(SITE).distance().arcminutes()).isLessThan(20);
    }

    /** If the screws are reversed, the pole star has left the finder, so the centre of rotation is not advised. */
    @Test
    void sightingAfterATest_isPossibleWhicheverWayTheScrewsWent() {
        Rig rig = Rig.typicalForkOnWedge();
        List<Step> steps = seen(120, -60);
        TurnScrews test = (TurnScrews) advice(rig, steps);
        steps.add(new Step.Turned(4, turns(test, ScrewTurn.Which.AZIMUTH), turns(test, ScrewTurn.Which.ALTITUDE)));
        assertThat(advice(rig, steps)).isInstanceOfSatisfying(TakeSighting.class, look -> {
            assertThat(look.reason()).isEqualTo("it shows which way the screws move the axis");
            assertThat(look.kind()).isNotEqualTo(SightingKind.STILL_POINT);
        });
    }

    /** Turns on a wedge like the typical rig's, but with other gains or reversed screws. */
    private static KnownAxis turned(AxisPointing from, double azimuthTurns, double altitudeTurns) {
        Rig rig = Rig.typicalForkOnWedge();
        return KnownAxis.exactly(
                SITE,
                AxisPointing.of(
                        from.azimuth().plus(rig.azimuthScrew().move(azimuthTurns, from.altitude())),
                        from.altitude().plus(rig.altitudeScrew().move(altitudeTurns, from.altitude()))));
    }
}
