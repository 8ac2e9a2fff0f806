package polewright.image.star;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ForkJoinPool;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.image.Frame;

/** Positions of stars: without bias, at the frame's edges, next to a neighbour, of any width. */
@Tag("slow")
class PlaceTest {
    @ParameterizedTest
    @ValueSource(doubles = {1.8, 2, 2.5, 4})
    void positionsWithinAPixel_areUnbiased(double fwhm) {
        int side = 12;
        int spacing = 24;
        DrawnSky sky = new DrawnSky(side * spacing, side * spacing, 100);
        for (int j = 0; j < side; j++) {
            for (int i = 0; i < side; i++) {
                // So bright that noise moves it by less than 0.001 pixel.
                sky.star(spacing * i + 12 + i / 12.0, spacing * j + 12 + j / 12.0, 1e7, fwhm);
            }
        }
        List<FoundStar> stars = StarFinder.find(sky.expose(1, 3, 1, 300, 1e9)).stars();
        assertThat(stars).hasSize(side * side);
        for (FoundStar star : stars) {
            int i = (int) Math.round((star.x() - 12) / spacing);
            int j = (int) Math.round((star.y() - 12) / spacing);
            assertThat(Math.abs(star.x() - (spacing * i + 12 + i / 12.0))).isLessThan(0.01);
            assertThat(Math.abs(star.y() - (spacing * j + 12 + j / 12.0))).isLessThan(0.01);
        }
    }

    @ParameterizedTest
    @CsvSource({"1.8, 50", "3, 30", "3, 200", "6, 100"})
    void starsWithWings_nearlyReachTheirOwnBound(double fwhm, double signalToNoise) {
        CramerRaoBound noise = new CramerRaoBound(20, 5);
        double flux = 1.3 * noise.fluxFor(signalToNoise, fwhm);
        StarGrid grid = new StarGrid(14, Math.max(30, (int) (9 * fwhm)), 2);
        DrawnSky sky = new DrawnSky(grid.width(), grid.width(), 20);
        grid.forEach((x, y) -> sky.moffat(x, y, flux, fwhm, 3));
        double errors = 0;
        double overSigmas = 0;
        List<StarGrid.Pair> pairs = grid.pairs(StarFinder.find(sky.expose(4, 5, 0.5, 300, 1e6)));
        for (StarGrid.Pair pair : pairs) {
            double dx = pair.star().x() - pair.x();
            double dy = pair.star().y() - pair.y();
            errors += dx * dx + dy * dy;
            overSigmas += Math.pow(dx / pair.star().sigmaX(), 2)
                    + Math.pow(dy / pair.star().sigmaY(), 2);
        }
        assertThat(pairs).hasSizeGreaterThanOrEqualTo(194);
        double rms = Math.sqrt(errors / (2 * pairs.size()));
        // 392 coordinates: 1 sigma of the ratio is 3.6%, of the mean square 7%.
        assertThat(rms / noise.moffatSigma(flux, fwhm, 3)).isBetween(0.85, 1.2);
        assertThat(overSigmas / (2 * pairs.size())).isBetween(0.75, 1.3);
    }

    @Test
    void starsCutByTheEdge_areInPlace_andTheEdgeCreatesNone() {
        DrawnSky sky = new DrawnSky(400, 300, 100);
        List<double[]> places = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            places.add(new double[] {20 + 45.3 * i, 0.3 * i});
            places.add(new double[] {20 + 45.3 * i, 299 - 0.3 * i});
        }
        for (int j = 1; j < 8; j++) {
            places.add(new double[] {0.3 * j, 35 * j});
            places.add(new double[] {399 - 0.3 * j, 35 * j});
            places.add(new double[] {200.4, 35 * j});
        }
        places.forEach(p -> sky.star(p[0], p[1], 8000, 2.6));
        // Beyond the edge, with some light inside the frame.
        sky.star(100, -3, 30_000, 2.6).star(402.5, 150, 30_000, 2.6);
        List<FoundStar> stars = StarFinder.find(sky.expose(1, 5, 1, 300, 65535)).stars();
        for (double[] p : places) {
            assertThat(stars).anyMatch(s -> Math.hypot(s.x() - p[0], s.y() - p[1]) < Math.max(0.15, 4 * s.sigmaX()));
        }
        assertThat(stars).hasSizeLessThanOrEqualTo(places.size());
    }

    @ParameterizedTest
    @CsvSource({"0.8, 0.5", "0.9, 0.5", "1.3, 0.5", "1.6, 0.3", "2, 0.3", "2.5, 0.5"})
    void starWithANeighbour_isLessCertainOrElongated(double apartInFwhm, double share) {
        double fwhm = 3;
        DrawnSky sky = new DrawnSky(600, 600, 100);
        StarGrid grid = new StarGrid(12, 50, 5);
        int[] drawn = {0};
        grid.forEach((x, y) -> {
            sky.star(x, y, 10_000, fwhm);
            if (drawn[0]++ % 4 == 0) {
                sky.star(x + apartInFwhm * fwhm * 0.8, y + apartInFwhm * fwhm * 0.6, share * 10_000, fwhm);
            }
        });
        List<StarGrid.Pair> pairs = grid.pairs(StarFinder.find(sky.expose(1, 5, 1, 300, 65535)));
        assertThat(pairs).hasSizeGreaterThanOrEqualTo(108);
        assertThat(pairs)
                .allMatch(p -> p.star().elongation() > 1.2
                        || Math.hypot(p.star().x() - p.x(), p.star().y() - p.y())
                                < 4.5 * Math.hypot(p.star().sigmaX(), p.star().sigmaY()));
    }

    @ParameterizedTest
    @CsvSource({"0.7, 0.2", "0.9, 0.2", "0.9, 0.4", "1.1, 0.1"})
    void blendedStars_haveALargerPositionUncertainty(double apartInFwhm, double share) {
        double fwhm = 3;
        DrawnSky sky = new DrawnSky(600, 600, 100);
        StarGrid grid = new StarGrid(12, 50, 5);
        int[] drawn = {0};
        grid.forEach((x, y) -> {
            sky.star(x, y, 20_000, fwhm);
            if (drawn[0]++ % 4 == 0) {
                sky.star(x + apartInFwhm * fwhm * 0.8, y + apartInFwhm * fwhm * 0.6, share * 20_000, fwhm);
            }
        });
        List<StarGrid.Pair> pairs = grid.pairs(StarFinder.find(sky.expose(1, 5, 1, 300, 65535)));
        assertThat(pairs).hasSize(144);
        double overSigmas = 0;
        for (int k = 0; k < 144; k += 4) {
            StarGrid.Pair pair = pairs.get(k);
            overSigmas += Math.pow((pair.star().x() - pair.x()) / pair.star().sigmaX(), 2)
                    + Math.pow((pair.star().y() - pair.y()) / pair.star().sigmaY(), 2);
        }
        // By the noise alone it would be in the hundreds.
        assertThat(overSigmas / 72).isLessThan(8);
    }

    @ParameterizedTest
    @ValueSource(doubles = {9, 14})
    void starsOutOfFocus_areFound(double fwhm) {
        DrawnSky sky = new DrawnSky(900, 900, 100);
        ScatteredStars stars = new ScatteredStars(900, 900, 40, 8 * fwhm, 20_000, 1).drawOn(sky, fwhm);
        StarList found = StarFinder.find(sky.expose(3, 5, 0.5, 300, 65535));
        ScatteredStars.Outcome outcome = stars.outcome(found, 3);
        assertThat(outcome.hits()).hasSizeGreaterThanOrEqualTo(36);
        assertThat(outcome.spurious()).hasSizeLessThanOrEqualTo(1);
        assertThat(outcome.errorsOverSigmas()).isBetween(0.5, 1.6);
    }

    @Test
    void brighterStars_comeFirst() {
        DrawnSky sky = new DrawnSky(900, 900, 100);
        ScatteredStars stars = new ScatteredStars(900, 900, 60, 30, 4000, 1).drawOn(sky, 2.5);
        List<FoundStar> found =
                StarFinder.find(sky.expose(3, 5, 0.5, 300, 65535)).stars();
        assertThat(found).isSortedAccordingTo((a, b) -> Double.compare(b.flux(), a.flux()));
        for (ScatteredStars.Hit hit :
                stars.outcome(new StarList(900, 900, found), 1.5).hits()) {
            // Half an electron per count.
            assertThat(hit.star().flux() / 2 / hit.truth().flux()).isBetween(0.8, 1.2);
        }
    }

    @Test
    void result_doesNotDependOnTheNumberOfProcessors() {
        DrawnSky sky = new DrawnSky(900, 700, 100);
        new ScatteredStars(900, 700, 120, 20, 800, 1).drawOn(sky, 2.5);
        Frame frame = sky.expose(3, 5, 0.5, 300, 65535);
        StarList one = new ForkJoinPool(1).submit(() -> StarFinder.find(frame)).join();
        StarList many = new ForkJoinPool(7).submit(() -> StarFinder.find(frame)).join();
        assertThat(one).isEqualTo(many);
    }

    @Test
    void result_isLimitedToTheBrightest() {
        DrawnSky sky = new DrawnSky(900, 700, 100);
        new ScatteredStars(900, 700, 120, 20, 2000, 1).drawOn(sky, 2.5);
        Frame frame = sky.expose(3, 5, 0.5, 300, 65535);
        StarList all = StarFinder.find(frame);
        StarList few = StarFinder.find(frame, new SearchSettings(5, 30));
        assertThat(few.size()).isEqualTo(30);
        assertThat(all.stars().subList(0, 25))
                .allMatch(s -> few.stars().stream().anyMatch(f -> Math.hypot(f.x() - s.x(), f.y() - s.y()) < 0.05));
    }
}
