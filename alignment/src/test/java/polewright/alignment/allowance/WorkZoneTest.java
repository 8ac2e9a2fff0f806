package polewright.alignment.allowance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static polewright.alignment.allowance.Items.LARKFELL;
import static polewright.alignment.allowance.Items.MEAN;
import static polewright.alignment.allowance.Items.UNGUIDED;
import static polewright.alignment.allowance.Items.along;
import static polewright.alignment.allowance.Items.shot;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.alignment.work.Work;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;
import polewright.mount.rig.Camera;
import polewright.sky.angle.Angle;

class WorkZoneTest {
    private static final Camera MAIN = new Camera("main", 1800, 3.8, 4656, 3520);
    private static final Work WORK = new Work(List.of(shot(MAIN, along(-10, 20, 30), 60, UNGUIDED, 2)));

    private static WorkZone polygon(int beginning, double... eastAndUp) {
        List<AxisOffset> corners = new ArrayList<>();
        for (int i = 0; i < eastAndUp.length; i += 2) {
            corners.add(AxisOffset.ofArcminutes(eastAndUp[i], eastAndUp[i + 1]));
        }
        Collections.rotate(corners, beginning);
        List<ZoneEdge> edges = new ArrayList<>();
        for (int i = 0; i < corners.size(); i++) {
            edges.add(new ZoneEdge(corners.get(i), corners.get((i + 1) % corners.size()), "shot", LimitCause.DRIFT));
        }
        return new WorkZone(WORK, edges, AxisOffset.NONE, Angle.ofArcminutes(1), "shot");
    }

    private static void assertSpan(WorkZone zone, double east, double low, double high) {
        Allowance.Span span = zone.upSpanAt(Angle.ofArcminutes(east)).orElseThrow();
        assertThat(span.low().arcminutes()).isCloseTo(low, within(1e-9));
        assertThat(span.high().arcminutes()).isCloseTo(high, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3})
    void square_hasItsWholeHeightAtEveryEast_whateverItsFirstCorner(int beginning) {
        WorkZone square = polygon(beginning, -2, -1, 2, -1, 2, 3, -2, 3);
        for (double east : new double[] {-2, -1, 0, 1.5, 2}) {
            assertSpan(square, east, -1, 3);
        }
        assertThat(square.upSpanAt(Angle.ofArcminutes(2.01))).isEmpty();
        assertThat(square.upSpanAt(Angle.ofArcminutes(-2.01))).isEmpty();
        assertThat(square.eastSpan().low().arcminutes()).isCloseTo(-2, within(1e-12));
        assertThat(square.eastSpan().high().arcminutes()).isCloseTo(2, within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2})
    void triangle_narrowsToItsCorner(int beginning) {
        WorkZone triangle = polygon(beginning, -1, 0, 3, -2, 3, 2);
        assertSpan(triangle, -1, 0, 0);
        assertSpan(triangle, 1, -1, 1);
        assertSpan(triangle, 3, -2, 2);
    }

    @Test
    void foundZone_containsTheEndsOfItsSpans() {
        WorkZone zone = Items.zone(LARKFELL, MEAN, WORK.items().get(0));
        for (double share = 0.01; share < 1; share += 0.02) {
            Angle east = zone.eastSpan()
                    .low()
                    .plus(zone.eastSpan().high().minus(zone.eastSpan().low()).times(share));
            Allowance.Span span = zone.upSpanAt(east).orElseThrow();
            Angle height = span.high().minus(span.low());
            for (double inside : new double[] {0.001, 0.5, 0.999}) {
                assertThat(zone.contains(new AxisOffset(east, span.low().plus(height.times(inside)))))
                        .isTrue();
            }
            assertThat(zone.contains(new AxisOffset(east, span.low().minus(height.times(0.001)))))
                    .isFalse();
            assertThat(zone.contains(new AxisOffset(east, span.high().plus(height.times(0.001)))))
                    .isFalse();
        }
    }

    /** A square of 2 sigma in each direction holds (2 Φ(2) − 1)² = 0.9111 of a Gaussian (handbook tables of Φ). */
    @Test
    void probabilityOfASquare_isTheProductOfItsSides() {
        WorkZone square = polygon(0, -2, -2, 2, -2, 2, 2, -2, 2);
        assertThat(ZoneProbability.of(square, AxisOffset.NONE, new OffsetCovariance(1, 0, 1)))
                .isCloseTo(0.9111, within(1e-4));
    }
}
