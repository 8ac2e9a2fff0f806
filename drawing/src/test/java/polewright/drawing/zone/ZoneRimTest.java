package polewright.drawing.zone;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.allowance.WorkZone;
import polewright.drawing.zone.ZoneRim.Stretch;
import polewright.mount.AxisOffset;

class ZoneRimTest {
    @Test
    void edgeIsDividedWhereAnotherCauseTakesOver_andNowhereElse() {
        WorkZone zone = SampleZones.threeItems();

        List<Stretch> stretches = ZoneRim.of(zone).stretches();

        assertThat(stretches)
                .extracting(Stretch::words)
                .containsExactly(
                        "M 13 guided: corners trail",
                        "Saturn at 200×: leaves the field",
                        "Vega 120 s: stars trail",
                        "M 13 guided: corners trail",
                        "Vega 120 s: stars trail");
        for (int i = 0; i < stretches.size(); i++) {
            Stretch next = stretches.get((i + 1) % stretches.size());
            assertThat(next.points().get(0)).isEqualTo(last(stretches.get(i)));
        }
        assertThat(ZoneRim.of(zone).points()).hasSize(zone.edges().size());
    }

    @Test
    void eachCauseIsListedOnce_longestFirst() {
        assertThat(ZoneRim.of(SampleZones.threeItems()).causes())
                .extracting(Stretch::words)
                .containsExactly(
                        "M 13 guided: corners trail", "Vega 120 s: stars trail", "Saturn at 200×: leaves the field");
    }

    @Test
    void disc_isOneStretch() {
        ZoneRim outline = ZoneRim.of(DiscAllowance.VISUAL);

        assertThat(outline.stretches()).extracting(Stretch::words).containsExactly("5′ from the pole");
        assertThat(outline.points())
                .allSatisfy(p -> assertThat(p.distance().arcminutes()).isBetween(4.999, 5.001));
    }

    private static AxisOffset last(Stretch stretch) {
        return stretch.points().get(stretch.points().size() - 1);
    }
}
