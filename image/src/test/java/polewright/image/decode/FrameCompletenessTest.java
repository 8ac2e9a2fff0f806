package polewright.image.decode;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.image.decode.FrameCompleteness.CutShort;
import polewright.image.decode.FrameCompleteness.NotAFrame;
import polewright.image.decode.FrameCompleteness.Whole;

/** A file that grows as it is saved is incomplete until its last relevant byte. */
class FrameCompletenessTest {
    static Stream<String> files() {
        Stream<String> fits = Authority.pixels("fits").keySet().stream().map(name -> "fits/" + name);
        return Stream.concat(fits, pictures());
    }

    static Stream<String> pictures() {
        return Authority.pixels("pictures").keySet().stream().map(name -> "pictures/" + name);
    }

    @ParameterizedTest
    @MethodSource("files")
    void wholeFile_isComplete(String name) {
        assertThat(FrameCompleteness.of(Authority.file(name), name, DecodeDeadline.NONE))
                .isEqualTo(new Whole());
    }

    @ParameterizedTest
    @MethodSource("pictures")
    void pictureBeingSaved_isIncomplete(String name) {
        byte[] file = Authority.file(name);
        for (int percent = 0; percent < 90; percent += 5) {
            int bytes = file.length * percent / 100;
            assertThat(FrameCompleteness.of(Arrays.copyOf(file, bytes), name, DecodeDeadline.NONE))
                    .as("%d of %d bytes", bytes, file.length)
                    .isIn(new CutShort(), bytes < 8 ? new NotAFrame() : new CutShort());
        }
    }

    /** 2880 bytes of an empty primary HDU, 2880 of header, then the tiles. */
    @ParameterizedTest
    @ValueSource(strings = {"rice.fits", "gzip1.fits", "gzip2.fits", "hcompress.fits", "plio.fits"})
    void compressedFitsFileBeingSaved_isIncomplete(String name) {
        byte[] file = Authority.file("fits/" + name);
        assertThat(FrameCompleteness.of(Arrays.copyOf(file, 5760 + 100), name, DecodeDeadline.NONE))
                .isEqualTo(new CutShort());
        assertThat(FrameCompleteness.of(Arrays.copyOf(file, 3000), name, DecodeDeadline.NONE))
                .isEqualTo(new CutShort());
        assertThat(FrameCompleteness.of(Arrays.copyOf(file, 2000), name, DecodeDeadline.NONE))
                .isEqualTo(new CutShort());
    }

    @Test
    void fitsFile_isCompleteOnceItsPixelsAreThere() {
        byte[] file = Authority.file("fits/uint16.fits");
        assertThat(FrameCompleteness.of(Arrays.copyOf(file, 2880 + 383), "dusk.fits", DecodeDeadline.NONE))
                .isEqualTo(new CutShort());
        assertThat(FrameCompleteness.of(Arrays.copyOf(file, 2880 + 384), "dusk.fits", DecodeDeadline.NONE))
                .isEqualTo(new Whole());
    }

    @Test
    void fitsFileWithAnExtension_isCompleteOnceThatIsThere() {
        byte[] file = Authority.file("fits/extension.fits");
        assertThat(FrameCompleteness.of(Arrays.copyOf(file, file.length - 2880), "dusk.fits", DecodeDeadline.NONE))
                .isEqualTo(new CutShort());
    }

    @Test
    void fitsFileWithoutAnImage_isIncomplete() {
        assertThat(FrameCompleteness.of(Authority.file("fits/no-image.fits"), "dusk.fits", DecodeDeadline.NONE))
                .isEqualTo(new CutShort());
    }

    @Test
    void emptyFile_isIncomplete() {
        assertThat(FrameCompleteness.of(new byte[0], "dusk.fits", DecodeDeadline.NONE))
                .isEqualTo(new CutShort());
    }

    @Test
    void otherFiles_areNotFrames() {
        assertThat(FrameCompleteness.of(
                        "Seeing was poor.".getBytes(StandardCharsets.US_ASCII), "notes.txt", DecodeDeadline.NONE))
                .isEqualTo(new NotAFrame());
    }
}
