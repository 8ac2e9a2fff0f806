package polewright.drawing.strip;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.drawing.DrawnSvg;
import polewright.drawing.DrawnSvg.Lettered;
import polewright.drawing.Palette;
import polewright.sky.time.Interval;

class NightDrawingTest {
    private static final Duration STEP = Duration.ofMinutes(10);

    /** Targets one after the other through the night, each near its highest, as a plan has them. */
    private static NightAltitudes night(Instant sunset, Duration length, int targets, Random random) {
        Interval shown = new Interval(
                sunset.minus(Duration.ofMinutes(30)), sunset.plus(length).plus(Duration.ofMinutes(30)));
        Interval dark = new Interval(sunset, sunset.plus(length));
        List<NightAltitudes.Target> all = new ArrayList<>();
        for (int i = 0; i < targets; i++) {
            Instant from = sunset.plus(length.multipliedBy(i).dividedBy(targets));
            Instant highest = from.plus(Duration.ofMinutes(random.nextInt(120) - 60));
            double most = 25 + 64 * random.nextDouble();
            Interval slot = new Interval(from, from.plus(length.dividedBy(targets)));
            all.add(new NightAltitudes.Target(List.of(points(dark, highest, most)), points(slot, highest, most)));
        }
        return new NightAltitudes(shown, List.of(dark), points(shown, sunset.plus(length.dividedBy(3)), 50), all);
    }

    private static List<NightAltitudes.Point> points(Interval when, Instant highest, double most) {
        List<NightAltitudes.Point> points = new ArrayList<>();
        for (Instant at = when.from(); !at.isAfter(when.to()); at = at.plus(STEP)) {
            double hours = Duration.between(highest, at).toSeconds() / 3600.0;
            points.add(new NightAltitudes.Point(at, most - 1.5 * hours * hours));
        }
        return points;
    }

    private static DrawnSvg drawn(NightAltitudes night, String zone) {
        return DrawnSvg.parse(NightDrawing.svg(night, ZoneId.of(zone), Palette.DARK));
    }

    @Test
    void anyNight_isLegible_andNumbersEveryTarget() {
        Random random = new Random(6);
        for (int i = 0; i < 60; i++) {
            int targets = 1 + random.nextInt(20);
            Duration length = Duration.ofMinutes(240 + random.nextInt(700));
            DrawnSvg drawn =
                    drawn(night(Instant.parse("2026-12-10T16:07:00Z"), length, targets, random), "Europe/London");
            drawn.assertLegible();
            assertThat(drawn.parts("names").get(0).texts().stream().map(Lettered::content))
                    .containsAll(IntStream.rangeClosed(1, targets)
                            .mapToObj(String::valueOf)
                            .toList())
                    .contains("Moon");
        }
    }

    @ParameterizedTest
    @CsvSource({"2026-12-10T16:07:00Z, Europe/London, 16", "2026-06-14T05:02:00Z, Pacific/Auckland, 18"})
    void hours_areThoseOfTheZone(String sunset, String zone, String first) {
        DrawnSvg drawn = drawn(night(Instant.parse(sunset), Duration.ofHours(14), 3, new Random(1)), zone);
        assertThat(drawn.texts().stream().map(Lettered::content)).contains(first, "0", "6");
    }

    @Test
    void targets_areNumberedInOrder() {
        DrawnSvg drawn = drawn(
                night(Instant.parse("2026-12-10T16:07:00Z"), Duration.ofHours(14), 3, new Random(1)), "Europe/London");
        List<Lettered> names = drawn.parts("names").get(0).texts();
        assertThat(names.stream().map(Lettered::content)).containsExactly("1", "2", "3", "Moon");
        assertThat(names.subList(0, 3).stream().map(name -> name.box().getCenterX()))
                .isSorted();
    }
}
