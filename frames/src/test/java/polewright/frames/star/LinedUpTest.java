package polewright.frames.star;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LinedUpTest {
    private static FoundStar star(double x, double y, double flux) {
        return new FoundStar(x, y, 0.1, 0.1, flux, 30, 3, 1, 0, false);
    }

    private static List<FoundStar> scattered(int count, Random dice) {
        List<FoundStar> stars = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            stars.add(star(dice.nextDouble() * 1600, dice.nextDouble() * 1200, 1000 * dice.nextDouble()));
        }
        return stars;
    }

    private static List<FoundStar> brightestFirst(List<FoundStar> stars) {
        return stars.stream()
                .sorted(Comparator.comparingDouble(FoundStar::flux).reversed())
                .toList();
    }

    @Test
    void piecesOfTwoSatellitesAreTakenOutAndTheStarsStay() {
        Random dice = new Random(3);
        List<FoundStar> stars = scattered(120, dice);
        List<FoundStar> pieces = new ArrayList<>();
        for (int i = 0; i < 25; i++) {
            double x = 100 + 55 * i;
            pieces.add(star(x, 80 + 0.7 * x + 0.3 * dice.nextGaussian(), 900));
            pieces.add(star(1500 - x, 300 + 0.2 * x + 0.3 * dice.nextGaussian(), 950));
        }
        List<FoundStar> all = new ArrayList<>(stars);
        all.addAll(pieces);
        List<FoundStar> left = LinedUp.removed(brightestFirst(all), 1600, 1200);
        assertThat(left).doesNotContainAnyElementsOf(pieces);
        assertThat(left.size()).isGreaterThan(112);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 9, 40, 250, 1500})
    void starsScatteredAtRandomAllStay(int count) {
        for (int seed = 0; seed < 20; seed++) {
            List<FoundStar> stars = brightestFirst(scattered(count, new Random(seed)));
            assertThat(LinedUp.removed(stars, 1600, 1200)).isEqualTo(stars);
        }
    }
}
