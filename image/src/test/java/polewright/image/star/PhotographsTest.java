package polewright.image.star;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.image.Frame;

/** Real photographs, with stars that others found and matched to a catalogue (JSON beside each, sources in its README). */
class PhotographsTest {
    @ParameterizedTest
    @ValueSource(strings = {"granasat_polar_05sec.jpg", "tetra3_Alt40_Azi135.tiff", "tetra3_Alt60_Azim45.tiff"})
    void brightStarsOfAPhotograph_areFound(String image) throws IOException {
        Photograph photograph = Photograph.named(image);
        List<FoundStar> stars = StarFinder.find(photograph.frame()).stars();
        assertThat(photograph.matched()).hasSize(40);
        assertThat(photograph.matched().stream().filter(p -> p.isAmong(stars, 1.5)))
                .hasSizeGreaterThanOrEqualTo(39);
        // And they come first: the matcher begins with the brightest.
        List<FoundStar> first = stars.subList(0, 60);
        assertThat(photograph.matched().stream().filter(p -> p.isAmong(first, 1.5)))
                .hasSizeGreaterThanOrEqualTo(36);
    }

    @Test
    void fourteenStarsAmongHundredsOfHotPixels_areFound_andComeFirst() throws IOException {
        Photograph photograph = Photograph.named("openstartracker_img6.png");
        List<FoundStar> stars = StarFinder.find(photograph.frame()).stars();
        assertThat(photograph.matched()).hasSize(14).allMatch(p -> p.isAmong(stars, 1));
        assertThat(photograph.matched()).allMatch(p -> p.isAmong(stars.subList(0, 50), 1));
        assertThat(stars.subList(0, 40).stream().filter(s -> isOnePixel(photograph.frame(), s)))
                .hasSizeLessThanOrEqualTo(3);
        assertThat(photograph.matched().stream().filter(p -> p.isAmong(stars.subList(0, 15), 1)))
                .hasSizeGreaterThanOrEqualTo(9);
    }

    /** Whether one pixel has most of the light of nine. */
    private static boolean isOnePixel(Frame frame, FoundStar star) {
        double most = 0;
        double all = 0;
        for (int j = -1; j <= 1; j++) {
            for (int i = -1; i <= 1; i++) {
                int x = (int) Math.round(star.x()) + i;
                int y = (int) Math.round(star.y()) + j;
                double light = frame.pixels()[y * frame.width() + x];
                most = Math.max(most, light);
                all += light;
            }
        }
        return most > 0.6 * all;
    }
}
