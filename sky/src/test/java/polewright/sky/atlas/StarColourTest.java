package polewright.sky.atlas;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StarColourTest {
    /** Common practice: the colours that observers report. */
    @ParameterizedTest
    @CsvSource({
        "Spica, BLUE_WHITE",
        "Vega, WHITE",
        "Procyon, CREAM",
        "Capella, YELLOW",
        "Arcturus, ORANGE",
        "Antares, RED_ORANGE",
        "Betelgeuse, RED_ORANGE",
        "Achernar, BLUE_WHITE"
    })
    void brightStarsHaveTheirWellKnownColours(String name, StarColour colour) {
        assertThat(StarColour.of(NamedStars.bundled().named(name))).contains(colour);
    }

    @Test
    void nearlyEveryBrightStarHasAColour() {
        assertThat(NamedStars.bundled().all().stream().filter(star -> star.magnitude() <= 3.5))
                .filteredOn(star -> StarColour.of(star).isEmpty())
                .hasSizeLessThan(8);
    }
}
