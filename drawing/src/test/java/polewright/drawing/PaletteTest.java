package polewright.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class PaletteTest {
    /** WCAG 2.1, success criteria 1.4.3 (text, 4.5 : 1) and 1.4.11 (graphics, 3 : 1). */
    @Test
    void lettersAndLines_haveEnoughContrast() {
        for (Palette palette : List.of(Palette.LIGHT, Palette.DARK)) {
            assertThat(contrast(palette.text(), palette.background())).isGreaterThanOrEqualTo(4.5);
            assertThat(contrast(palette.axis(), palette.background())).isGreaterThanOrEqualTo(4.5);
            assertThat(contrast(palette.ink(), palette.background())).isGreaterThanOrEqualTo(3);
            assertThat(contrast(palette.guide(), palette.background())).isGreaterThanOrEqualTo(3);
        }
    }

    @Test
    void darkPaletteIsRed() {
        Palette dark = Palette.DARK;
        for (String colour : List.of(dark.text(), dark.ink(), dark.guide(), dark.metal(), dark.glass(), dark.axis())) {
            assertThat(channel(colour, 1)).isGreaterThan(3 * channel(colour, 3));
            assertThat(channel(colour, 1)).isGreaterThan(3 * channel(colour, 5));
        }
    }

    /** WCAG 2.1, definition of contrast ratio. */
    private static double contrast(String one, String other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    /** WCAG 2.1, definition of relative luminance (sRGB). */
    private static double luminance(String colour) {
        return 0.2126 * linear(channel(colour, 1))
                + 0.7152 * linear(channel(colour, 3))
                + 0.0722 * linear(channel(colour, 5));
    }

    private static double linear(double channel) {
        return channel <= 0.03928 ? channel / 12.92 : Math.pow((channel + 0.055) / 1.055, 2.4);
    }

    private static double channel(String colour, int at) {
        return Integer.parseInt(colour.substring(at, at + 2), 16) / 255.0;
    }
}
