package polewright.image.decode;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.sky.InputRefused;

/** A PNG has checksums (ISO/IEC 15948, section 5.3): a picture that does not match them is refused. */
class DamagedPngTest {
    private static byte[] withFlippedByte(byte[] content, int at) {
        byte[] flipped = content.clone();
        flipped[at] ^= 1;
        return flipped;
    }

    @ParameterizedTest
    @ValueSource(strings = {"grey16.png", "colour8.png"})
    void flippedByteInItsData_isRefusedAsDamaged(String name) {
        byte[] content = Authority.file("pictures/" + name);
        int lastOfData = content.length - 12 - 4 - 1;
        assertThatThrownBy(
                        () -> FrameReader.read(withFlippedByte(content, lastOfData), "dusk.png", DecodeOptions.DEFAULT))
                .isInstanceOf(InputRefused.class)
                .hasMessageStartingWith("dusk.png: it is damaged");
    }

    /** The library accepts a wrong palette. */
    @Test
    void flippedByteInItsPalette_isRefusedAsDamaged() {
        byte[] content = Authority.file("pictures/palette.png");
        int palette = new String(content, StandardCharsets.ISO_8859_1).indexOf("PLTE") + 4;
        assertThatThrownBy(() -> FrameReader.read(withFlippedByte(content, palette), "dusk.png", DecodeOptions.DEFAULT))
                .isInstanceOf(InputRefused.class)
                .hasMessage("dusk.png: it is damaged, and its stars may be in the wrong places."
                        + " Copy it again from the camera, or take another frame.");
    }
}
