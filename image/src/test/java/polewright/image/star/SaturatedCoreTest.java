package polewright.image.star;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.image.Frame;
import polewright.image.FrameFacts;

/** Stars with saturated pixels are centred by their wings, are marked as saturated, and still come first. */
@Tag("slow")
class SaturatedCoreTest {
    private static final double FULL = 30_000;
    private static final int SPACING = 120;

    @ParameterizedTest(name = "peak {0} times full, FWHM {1}")
    @CsvSource({"3, 1.8", "30, 1.8", "3, 3", "30, 3", "200, 3", "3, 5", "30, 5", "200, 5"})
    void wings_giveTheCentre(double timesFull, double fwhm) {
        for (boolean moffat : new boolean[] {false, true}) {
            DrawnSky sky = new DrawnSky(6 * SPACING, 6 * SPACING, 100);
            StarGrid grid = new StarGrid(6, SPACING, 1);
            int[] drawn = {0};
            double sigma = DrawnSky.sigmaOf(fwhm);
            grid.forEach((x, y) -> {
                // Every third star is saturated; the others show the PSF.
                double flux = drawn[0]++ % 3 == 0 ? timesFull * FULL * 2 * Math.PI * sigma * sigma : 30_000;
                if (moffat) {
                    sky.moffat(x, y, flux, fwhm, 3);
                } else {
                    sky.star(x, y, flux, fwhm);
                }
            });
            StarList stars = StarFinder.find(sky.expose(2, 5, 1, 300, FULL));
            List<FoundStar> brightest = stars.stars().subList(0, 12);
            assertThat(brightest).allMatch(FoundStar::saturated);
            assertThat(stars.stars().subList(12, stars.size())).noneMatch(FoundStar::saturated);
            List<StarGrid.Pair> full =
                    grid.pairs(stars).stream().filter(p -> p.star().saturated()).toList();
            assertThat(full)
                    .hasSize(12)
                    .allMatch(p -> Math.hypot(p.star().x() - p.x(), p.star().y() - p.y()) < 0.02);
            // Symmetric wings are good to a few thousandths; real ones may be misleading, and the sigma allows for it.
            assertThat(full).allMatch(p -> p.star().sigmaX() > 0.005 && p.star().sigmaX() < 0.3);
        }
    }

    @ParameterizedTest
    @CsvSource({"12, 30", "40, 5", "0, 60"})
    void chargeBleedingAlongColumns_doesNotMoveTheStar(int up, int down) {
        DrawnSky sky = new DrawnSky(400, 400, 100);
        StarGrid grid = new StarGrid(4, 100, 3);
        grid.forEach((x, y) -> sky.star(x, y, 20_000, 2.5));
        sky.star(150.3, 201.4, 5e6, 2.5);
        for (int y = 201 - up; y <= 201 + down; y++) {
            sky.add(150, y, 1e6).add(151, y, y % 3 == 0 ? 1e6 : 9000);
        }
        StarList stars = StarFinder.find(sky.expose(2, 5, 1, 300, FULL));
        FoundStar first = stars.stars().get(0);
        assertThat(first.saturated()).isTrue();
        assertThat(first.x()).isBetween(149.9, 150.7);
        assertThat(first.y()).isBetween(200.9, 201.9);
        assertThat(Math.abs(first.y() - 201.4)).isLessThan(4 * first.sigmaY());
        assertThat(stars.stars()).hasSizeLessThanOrEqualTo(18);
    }

    @Test
    void unknownSaturation_isFoundInTheFrame() {
        DrawnSky sky = new DrawnSky(400, 400, 100);
        StarGrid grid = new StarGrid(4, 100, 3);
        grid.forEach((x, y) -> sky.star(x, y, 20_000, 3));
        sky.star(150.3, 201.4, 5e6, 3);
        Frame told = sky.expose(2, 5, 1, 300, FULL);
        Frame untold = new Frame(400, 400, told.pixels(), Float.POSITIVE_INFINITY, FrameFacts.NONE);
        FoundStar first = StarFinder.find(untold).stars().get(0);
        assertThat(first.saturated()).isTrue();
        assertThat(first.x()).isBetween(150.2, 150.4);
        assertThat(first.y()).isBetween(201.3, 201.5);
    }
}
