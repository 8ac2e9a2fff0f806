package polewright.data;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class StarPlacesTest {
    @Test
    void search_agreesWithBruteForce_includingThePoles() {
        Random random = new Random(7);
        int size = 20_000;
        double[] vectors = new double[3 * size];
        for (int i = 0; i < size; i++) {
            // Concentrated around the poles and along 0h.
            double dec = (i % 2 == 0 ? 1 : -1) * (90 - Math.abs(random.nextGaussian()));
            System.arraycopy(StarPlaces.unit(random.nextGaussian(), dec), 0, vectors, 3 * i, 3);
        }
        StarPlaces places = new StarPlaces(vectors);
        for (double dec : new double[] {90, 89.7, -89.3, -90}) {
            double[] middle = StarPlaces.unit(359.9, dec);
            TreeSet<Integer> expected = new TreeSet<>();
            for (int i = 0; i < size; i++) {
                if (places.arcsecFrom(i, middle) <= 300) {
                    expected.add(i);
                }
            }
            TreeSet<Integer> found = new TreeSet<>();
            places.within(300, middle, found::add);
            assertThat(found).isEqualTo(expected).isNotEmpty();
            assertThat(expected).contains(places.nearestWithin(300, middle));
        }
    }

    @Test
    void nothingWithinReach_isMinusOne() {
        StarPlaces places = new StarPlaces(StarPlaces.unit(10, 20));
        assertThat(places.nearestWithin(10, StarPlaces.unit(10, 20.01))).isEqualTo(-1);
        assertThat(places.nearestWithin(40, StarPlaces.unit(10, 20.01))).isZero();
    }
}
