package polewright.image.match;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.atlas.StarField;

/** Searches by cells give the same results as a search of all stars. */
class MappedStarsTest {
    private static final StarField STARS =
            StarAtlas.bundled().starsWithin(Angle.ZERO, Angle.ofDegrees(90), Angle.ofDegrees(180), 6.5, 2026);
    private static final MappedStars SKY = new MappedStars(STARS, STARS.size(), Math.PI);

    @ParameterizedTest
    @CsvSource({"0, 90, 3", "0, -90, 3", "359.9, 0, 5", "0.1, 89.5, 2", "120, 40, 20", "200, -75, 40", "10, 10, 170"})
    void starsNearADirection_agreeWithAFullSearch(double raDeg, double decDeg, double radiusDeg) {
        Vector3D middle = new Vector3D(Math.toRadians(raDeg), Math.toRadians(decDeg));
        int below = 4000;
        List<Integer> found = new ArrayList<>();
        SKY.grid()
                .near(
                        middle.getX(),
                        middle.getY(),
                        middle.getZ(),
                        Math.toRadians(radiusDeg),
                        below,
                        (rank, apart2) -> found.add(rank));
        List<Integer> expected = IntStream.range(0, below)
                .filter(i -> Vector3D.angle(STARS.direction(i), middle) <= Math.toRadians(radiusDeg))
                .boxed()
                .toList();
        assertThat(found).containsExactlyInAnyOrderElementsOf(expected);
    }

    @Test
    void neighbours_areTheNearestBrighterStars() {
        int[] neighbours = BrighterNeighbours.of(SKY);
        Random dice = new Random(11);
        int compared = 0;
        for (int trial = 0; trial < 200; trial++) {
            int rank = 60 + dice.nextInt(SKY.count() - 60);
            List<Integer> nearest = IntStream.range(0, rank)
                    .boxed()
                    .sorted(Comparator.comparingDouble(i -> STARS.direction(i).distance(STARS.direction(rank))))
                    .limit(4)
                    .toList();
            // Merged pairs are left out by design; they are few, and not what is tested here.
            if (hasMergedPair(rank, nearest)) {
                continue;
            }
            compared++;
            int base = BrighterNeighbours.EACH * rank;
            assertThat(List.of(neighbours[base], neighbours[base + 1], neighbours[base + 2]))
                    .as("rank %d", rank)
                    .containsExactlyElementsOf(nearest.subList(0, 3));
        }
        assertThat(compared).isGreaterThan(150);
    }

    private static boolean hasMergedPair(int rank, List<Integer> nearest) {
        double limit = 0.05 * STARS.direction(rank).distance(STARS.direction(nearest.get(2)));
        List<Integer> all = new ArrayList<>(nearest);
        all.add(rank);
        return all.stream()
                .anyMatch(a ->
                        all.stream().anyMatch(b -> a < b && STARS.direction(a).distance(STARS.direction(b)) < limit));
    }
}
