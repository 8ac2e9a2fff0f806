package polewright.report.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import polewright.alignment.allowance.LimitCause;
import polewright.alignment.allowance.WorkZone;
import polewright.alignment.allowance.ZoneEdge;
import polewright.alignment.work.SkyRegion;
import polewright.alignment.work.VisualObservation;
import polewright.alignment.work.Work;
import polewright.mount.AxisOffset;
import polewright.sky.angle.Angle;

class ZoneWordsTest {
    private static final int POINTS = 360;

    /** A circle of 24′ about the pole, cut flat at the given number of arcminutes east and west. */
    private static WorkZone cutAt(double arcmin) {
        List<AxisOffset> corners = new ArrayList<>();
        for (int i = 0; i < POINTS; i++) {
            double angle = 2 * Math.PI * i / POINTS;
            double east = 24 * Math.cos(angle);
            if (Math.abs(east) <= arcmin) {
                corners.add(AxisOffset.ofArcminutes(east, 24 * Math.sin(angle)));
            }
        }
        List<ZoneEdge> edges = new ArrayList<>();
        for (int i = 0; i < corners.size(); i++) {
            edges.add(new ZoneEdge(
                    corners.get(i), corners.get((i + 1) % corners.size()), "a look", LimitCause.LEAVES_FIELD));
        }
        VisualObservation look = new VisualObservation(
                "a look",
                Angle.ofDegrees(0.8),
                Duration.ofMinutes(15),
                new VisualObservation.Finding.Centred(),
                SkyRegion.Above.THIRTY_DEGREES);
        return new WorkZone(
                new Work(List.of(look)), edges, AxisOffset.NONE, Angle.ofArcminutes(Math.min(24, arcmin)), "a look");
    }

    @Test
    void zoneWithFlatSides_isNotTheSameInEveryDirection() {
        assertThat(ZoneWords.of(cutAt(23.2)).get(0).inTerminal())
                .isEqualTo("ZONE  Good enough: within 23′ of the best aim, in some directions farther: from 23′ west to"
                        + " 23′ east, and"
                        + " from 24′ below to 24′ above the pole.");
        assertThat(ZoneWords.of(cutAt(24)).get(0).inTerminal())
                .isEqualTo("ZONE  Good enough: within 24′ of the best aim, in any direction.");
    }

    @Test
    void exclusionAroundThePole_isReported() {
        assertThat(region(SkyRegion.Above.THIRTY_DEGREES))
                .endsWith("anywhere above 30°, except within 10° of the pole.");
        assertThat(region(new SkyRegion.Above(Angle.ofDegrees(30), true)))
                .endsWith("anywhere above 30°, including the area around the pole.");
    }

    private static String region(SkyRegion region) {
        return WorkWords.of(new VisualObservation(
                "a look",
                Angle.ofDegrees(0.8),
                Duration.ofMinutes(15),
                new VisualObservation.Finding.Centred(),
                region));
    }
}
