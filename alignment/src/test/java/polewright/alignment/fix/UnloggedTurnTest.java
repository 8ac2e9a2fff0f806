package polewright.alignment.fix;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** An unlogged turn between two sightings. */
class UnloggedTurnTest {
    private static final Site SITE = Site.ofDegrees(54.60, 0, 240);
    private static final Rig RIG = Rig.typicalForkOnWedge();
    private static final KnownAxis BEFORE = KnownAxis.exactly(SITE, AxisOffset.ofArcminutes(20, 30));
    private static final KnownAxis AFTER = KnownAxis.exactly(SITE, AxisOffset.ofArcminutes(20, -10));

    /** Two sightings agree before the unlogged turn, and two after it. */
    private static List<Step> night() {
        return new ArrayList<>(List.of(
                BEFORE.step(2, BEFORE.driftOnMeridian(10, Angle.ofArcseconds(4))),
                BEFORE.step(3, BEFORE.driftInEast(10, Angle.ofArcseconds(4))),
                BEFORE.step(4, BEFORE.driftInWest(10, Angle.ofArcseconds(4))),
                AFTER.step(5, AFTER.driftInWest(10, Angle.ofArcseconds(4))),
                AFTER.step(6, AFTER.driftInEast(10, Angle.ofArcseconds(4)))));
    }

    @Test
    void unloggedTurn_isNamedWithItsScrewAndPlace() {
        Fix fix = FixSolver.solve(SITE, RIG, KnownAxis.AIR, night());

        Explanation mostLikely = fix.explanations().get(0);
        assertThat(mostLikely.mistake().map(Mistake::words))
                .isEqualTo(Optional.of("the altitude screw was turned between #4 and #5, and that was not logged"));
        assertThat(mostLikely.notUsed()).isEmpty();
        assertThat(mostLikely.state().offset().up().arcminutes()).isCloseTo(-10, within(2.0));
        assertThat(fix.agreements()).noneMatch(Agreement::accused);
    }

    /** With only one sighting before the turn, that sighting may be wrong instead. */
    @Test
    void unloggedTurn_afterOneSighting_isNotCertain() {
        List<Step> steps = night();
        steps.remove(1);
        steps.remove(1);
        steps.add(1, BEFORE.step(4, BEFORE.driftInWest(10, Angle.ofArcseconds(4))));

        Fix fix = FixSolver.solve(SITE, RIG, KnownAxis.AIR, steps);

        assertThat(fix.agreements()).noneMatch(Agreement::accused);
        assertThat(fix.state().offset().up().arcminutes()).isCloseTo(-10, within(3.0));
    }

    @Test
    void turnOfUnknownSize_leavesTheNightWithNothingToExplain() {
        List<Step> steps = night();
        steps.add(3, Step.TurnedUnlogged.after(7, false, true));

        Fix fix = FixSolver.solve(SITE, RIG, KnownAxis.AIR, steps);

        assertThat(fix).isInstanceOf(Fix.Solved.class);
        assertThat(fix.explanations()).hasSize(1);
        assertThat(fix.state().offset().up().arcminutes()).isCloseTo(-10, within(2.0));
        assertThat(fix.state().offset().east().arcminutes()).isCloseTo(20, within(2.0));
    }

    @Test
    void consistentNight_isNotExplainedByAnUnloggedTurn() {
        List<Step> steps = List.of(
                BEFORE.step(2, BEFORE.driftOnMeridian(10, Angle.ofArcseconds(4))),
                BEFORE.step(3, BEFORE.driftInEast(10, Angle.ofArcseconds(4))),
                BEFORE.step(4, BEFORE.driftInWest(10, Angle.ofArcseconds(4))));

        Fix fix = FixSolver.solve(SITE, RIG, KnownAxis.AIR, steps);

        assertThat(fix.explanations()).hasSize(1);
        assertThat(fix.explanations().get(0).mistake()).isEmpty();
    }
}
