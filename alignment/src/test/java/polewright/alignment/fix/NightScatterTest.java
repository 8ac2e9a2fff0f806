package polewright.alignment.fix;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** Nights whose readings scatter as stated, or more. */
class NightScatterTest {
    private static final Site SITE = Site.ofDegrees(54.60, -2.90, 240);
    private static final Rig RIG = Rig.typicalForkOnWedge();
    private static final AxisOffset OFFSET = AxisOffset.ofArcminutes(14, -9);
    private static final Angle STATED = Angle.ofArcseconds(4);
    private static final int NIGHTS = 400;
    // Each takes a hundred times as long.
    private static final int NIGHTS_THAT_QUARREL = 60;
    private static final int DRIFTS = 12;
    // 95 % point of χ² with two degrees of freedom, handbook tables.
    private static final double REGION_95 = 5.991;

    private static KnownAxis scattering(double timesAsStated, long seed) {
        Random random = new Random(seed);
        return new KnownAxis(SITE, AxisPointing.of(SITE, OFFSET), () -> timesAsStated * random.nextGaussian());
    }

    private static List<Step> drifts(KnownAxis known, int count) {
        return new ArrayList<>(IntStream.range(0, count)
                .mapToObj(i -> known.step(2L + i, known.drift(known.star(-66 + 12 * i, 10), 10, STATED)))
                .toList());
    }

    private static Fix fix(List<Step> steps) {
        return FixSolver.solve(SITE, RIG, KnownAxis.AIR, steps);
    }

    private static List<Fix> nights(int count, double timesAsStated) {
        return IntStream.range(0, count)
                .mapToObj(seed -> fix(drifts(scattering(timesAsStated, seed), DRIFTS)))
                .toList();
    }

    private static double shareInside(List<Fix> nights) {
        return nights.stream()
                        .filter(fix -> fix.state()
                                        .offsetCovariance()
                                        .normalisedSquare(fix.state().offset().minus(OFFSET))
                                <= REGION_95)
                        .count()
                / (double) nights.size();
    }

    private static double meanScatter(List<Fix> nights) {
        return nights.stream().mapToDouble(Fix::scatter).average().orElseThrow();
    }

    @Test
    void errorsTwiceAsLargeAsStated_widenTheRegion() {
        List<Fix> nights = nights(NIGHTS_THAT_QUARREL, 2);

        assertThat(meanScatter(nights)).isGreaterThan(1.25);
        // With the stated sigmas it would be 1 − 0.05^(1/4) = 53 %.
        assertThat(shareInside(nights)).isGreaterThan(0.7);
    }

    @Test
    void errorsAsStated_hardlyWidenTheRegion() {
        List<Fix> nights = nights(NIGHTS, 1);

        assertThat(meanScatter(nights)).isLessThan(1.12);
        assertThat(shareInside(nights)).isBetween(0.93, 0.99);
    }

    /** Errors of ±2 sigmas that cancel over every four readings: the axis is right, and χ² is 4 per measurement. */
    @Test
    void readingsOfKnownScatter_giveTheConjugateFactor() {
        int figures = 30;
        double[] errors = new double[figures];
        for (int i = 0; i < figures; i++) {
            errors[i] = i / 2 % 2 == 0 ? 2 : -2;
        }
        int[] next = {0};
        KnownAxis known = new KnownAxis(SITE, AxisPointing.of(SITE, OFFSET), () -> errors[next[0]++ % figures]);
        List<Step> steps = new ArrayList<>();
        for (int i = 0; i < figures; i++) {
            steps.add(known.step(2L + steps.size(), known.driftOnMeridian(10, STATED)));
        }

        // √((8 + 30 · 4) / (8 + 30)), to the search step of 10 %.
        assertThat(fix(steps).scatter()).isCloseTo(1.84, within(0.19));
    }

    @Test
    void outlier_isSetAside_andDoesNotCount() {
        for (long seed = 0; seed < 50; seed++) {
            KnownAxis known = scattering(1, seed);
            List<Step> steps = drifts(known, 7);
            long wrong = 2L + steps.size();
            steps.add(known.step(wrong, KnownAxis.reversed(known.driftOnMeridian(10, STATED))));

            Fix fix = fix(steps);

            assertThat(fix.agreement(wrong)).get().matches(Agreement::contradictory);
            assertThat(fix.scatter()).isLessThan(1.4);
        }
    }

    @Test
    void compassFarOff_doesNotChangeTheScatterOfSkyReadings() {
        KnownAxis sky = KnownAxis.exactly(SITE, OFFSET);
        KnownAxis iron = KnownAxis.exactly(SITE, AxisOffset.ofArcminutes(5 * 60, 0));
        List<Step> steps = drifts(sky, 6);
        steps.add(0, iron.step(1, iron.compass(Angle.ofDegrees(3))));

        assertThat(fix(steps).scatter()).isEqualTo(1);
    }
}
