package polewright.alignment.fix;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import polewright.mount.AxisOffset;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

class AlternativesTest {
    private static final Site LARKFELL = Site.ofDegrees(54.60, -2.90, 240);
    private final KnownAxis axis = KnownAxis.exactly(LARKFELL, AxisOffset.NONE);
    private final Alternatives alternatives = new Alternatives(LARKFELL, KnownAxis.AIR);

    @Test
    void alternatives_areComputedOnce() {
        Step.Sighted drift = axis.step(2, axis.driftOnMeridian(10, Angle.ofArcseconds(3)));

        assertThat(alternatives.misreadings(drift))
                .isNotEmpty()
                .isSameAs(alternatives.misreadings(drift))
                .isNotEqualTo(alternatives.otherStars(drift));
    }

    @Test
    void correctedSighting_isRecomputedUnderItsNumber() {
        Step.Sighted wrong = axis.step(2, axis.driftOnMeridian(10, Angle.ofArcseconds(3)));
        Step.Sighted right = axis.step(2, axis.driftInEast(10, Angle.ofArcseconds(3)));
        var ofTheWrongOne = alternatives.misreadings(wrong);

        assertThat(alternatives.misreadings(right)).isNotSameAs(ofTheWrongOne);
        assertThat(alternatives
                        .misreadings(right)
                        .get(0)
                        .model()
                        .residual(axis.axis().elevatedEnd()))
                .isEqualTo(new Alternatives(LARKFELL, KnownAxis.AIR)
                        .misreadings(right)
                        .get(0)
                        .model()
                        .residual(axis.axis().elevatedEnd()));
    }
}
