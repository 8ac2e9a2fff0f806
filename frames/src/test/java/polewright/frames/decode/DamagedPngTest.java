package polewright.frames.decode;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.sky.InputRefused;

/** A PNG carries checksums (ISO/IEC 15948, section 5.3): a picture that does not agree with them is refused. */
class DamagedPngTest {
    @ParameterizedTest
    @ValueSource(strings = {"grey16.png", "colour8.png"})
    void flippedByteInItsData_isRefusedAsDamaged(String name) {
        byte[] content = Authority.file("pictures/" + name);
        // The last bytes of the compressed data are their own checksum, which the library does not read.
        int lastOfData = content.length - 12 - 4 - 1;
        content[lastOfData] ^= 1;
        assertThatThrownBy(() -> FrameReader.read(content, "dusk.png", DecodeOptions.DEFAULT))
                .isInstanceOf(InputRefused.class)
                .hasMessage("dusk.png: it is damaged, and its stars may be in the wrong places:"
                        + " copy it again from the camera, or take another frame.");
    }
}
