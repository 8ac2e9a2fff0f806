package polewright.drawing.strip;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.drawing.DrawnSvg;
import polewright.drawing.DrawnSvg.Lettered;
import polewright.drawing.Palette;

class SeasonsDrawingTest {
    private static final Instant FIRST = Instant.parse("2025-01-10T20:00:00Z");

    private static AxisMotion motion(int nights, double daysApart, double arcminEach) {
        List<AxisMotion.Night> all = new ArrayList<>();
        List<AxisMotion.Spot> trend = new ArrayList<>();
        for (int i = 0; i < nights; i++) {
            Instant at = FIRST.plus(Duration.ofMinutes(Math.round(daysApart * 1440 * i)));
            all.add(new AxisMotion.Night(at, arcminEach * i, i == 0 ? 0 : Math.abs(arcminEach) / 4, i > 0));
            trend.add(new AxisMotion.Spot(at, arcminEach * i));
        }
        return new AxisMotion(all, trend);
    }

    private static DrawnSvg drawn(int nights, double daysApart, double east, double up) {
        return DrawnSvg.parse(SeasonsDrawing.svg(
                nights, motion(nights, daysApart, east), motion(nights, daysApart, up), Palette.LIGHT));
    }

    @Test
    void anySeason_isLegible() {
        Random random = new Random(8);
        for (int i = 0; i < 60; i++) {
            drawn(
                            2 + random.nextInt(30),
                            Math.exp(4 * random.nextDouble() - 0.5),
                            2 * random.nextGaussian(),
                            4 * random.nextGaussian())
                    .assertLegible();
        }
    }

    @Test
    void nothingKnown_isSaid() {
        DrawnSvg drawn = drawn(0, 1, 1, 1);
        drawn.assertLegible();
        assertThat(drawn.texts().stream().map(Lettered::content)).containsExactly("No drift between two nights known.");
    }

    @ParameterizedTest
    @CsvSource({"1.5, -2, true", "-1.5, -2, false"})
    void eastward_isUpInItsStrip(double east, double up, boolean rises) {
        List<DrawnSvg> strips = drawn(9, 30, east, up).parts("east");
        List<java.awt.geom.Line2D> drifts = strips.get(0).lines("drift");
        assertThat(drifts.get(7).getY2() < drifts.get(0).getY1()).isEqualTo(rises);
    }
}
