package polewright.alignment.fix;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.LevelledScale;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.Rig;
import polewright.mount.rig.View;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** An underdetermined fix states in plain words what is not known yet; the advice explains how to measure it. */
class UnderdeterminedTest {
    private static final String BOTH = "no fix yet";
    private static final String EAST = "how far east or west the axis points has not been measured yet";
    private static final String UP = "how high the axis points has not been measured yet";

    private static Fix fix(KnownAxis known, List<Step> steps) {
        return FixSolver.solve(known.site(), Rig.typicalForkOnWedge(), KnownAxis.AIR, steps);
    }

    private static void assertMissing(Fix fix, String missing) {
        assertThat(fix).isInstanceOf(Fix.Underdetermined.class);
        assertThat(((Fix.Underdetermined) fix).missing()).isEqualTo(missing);
    }

    @ParameterizedTest
    @ValueSource(doubles = {75, 54.6, 5, -5, -43.95, -75})
    void missingDirection_isNamed(double latitudeDeg) {
        KnownAxis known = KnownAxis.exactly(Site.ofDegrees(latitudeDeg, 0, 0), AxisOffset.ofArcminutes(100, 50));
        Step compass = known.step(2, known.compass(CompassBearing.USUAL_SIGMA));
        Step scale = known.step(3, known.scale(LevelledScale.USUAL_SIGMA));
        Step meridian = known.step(4, known.driftOnMeridian(5, Angle.ofArcseconds(4)));
        Step east = known.step(5, known.driftInEast(10, Angle.ofArcseconds(4)));
        Step still = known.step(
                6, known.stillPoint(View.of(Orientation.INVERTED), Angle.ofDegrees(8), Angle.ofArcminutes(20)));

        assertMissing(fix(known, List.of()), BOTH);
        assertMissing(fix(known, List.of(compass)), UP);
        assertMissing(fix(known, List.of(meridian)), UP);
        assertMissing(fix(known, List.of(scale)), EAST);
        assertThat(fix(known, List.of(compass, scale))).isInstanceOf(Fix.Solved.class);
        assertThat(fix(known, List.of(meridian, east))).isInstanceOf(Fix.Solved.class);
        assertThat(fix(known, List.of(still))).isInstanceOf(Fix.Solved.class);
        assertMissing(fix(known, List.of(still, new Step.Shifted(7, AxisState.PRIOR_SIGMA))), BOTH);
    }
}
