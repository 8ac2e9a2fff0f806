package polewright.image.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.image.decode.FrameCompleteness.CutShort;
import polewright.image.decode.FrameCompleteness.NotAFrame;
import polewright.image.decode.FrameCompleteness.Whole;
import polewright.sky.InputRefused;

/** Gzipped files (RFC 1952): read like their contents, and expanded no further than the limits allow. */
class GzippedFileTest {
    private static byte[] gzipped(byte[] content) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (GZIPOutputStream out = new GZIPOutputStream(bytes)) {
            out.write(content);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    @ParameterizedTest
    @ValueSource(strings = {"fits/uint16.fits", "fits/rice.fits", "pictures/grey16.tiff"})
    void gzippedFrame_isReadLikeItsContents(String name) {
        byte[] content = Authority.file(name);
        byte[] packed = gzipped(content);
        assertThat(FrameReader.read(packed, name + ".gz", DecodeOptions.DEFAULT).pixels())
                .isEqualTo(
                        FrameReader.read(content, name, DecodeOptions.DEFAULT).pixels());
        assertThat(FrameCompleteness.of(packed, name + ".gz", DecodeDeadline.NONE))
                .isEqualTo(new Whole());
        assertThat(RowOrder.of(packed, name + ".gz")).isEqualTo(RowOrder.of(content, name));
    }

    @Test
    void truncatedGzippedFrame_isIncomplete() {
        byte[] packed = gzipped(Authority.file("fits/uint16.fits"));
        byte[] cut = Arrays.copyOf(packed, packed.length - 9);
        assertThat(FrameCompleteness.of(cut, "dusk.fits.gz", DecodeDeadline.NONE))
                .isEqualTo(new CutShort());
        assertThatThrownBy(() -> FrameReader.read(cut, "dusk.fits.gz", DecodeOptions.DEFAULT))
                .isInstanceOf(InputRefused.class)
                .hasMessage("dusk.fits.gz: this gzip file is incomplete."
                        + " Wait until it is fully saved, or copy it again.");
    }

    @Test
    void gzippedFrameWithAFlippedByte_isRefusedAsDamaged() {
        byte[] packed = gzipped(Authority.file("fits/uint16.fits"));
        packed[packed.length - 7] ^= 1;
        assertThat(FrameCompleteness.of(packed, "dusk.fits.gz", DecodeDeadline.NONE))
                .isEqualTo(new Whole());
        assertThatThrownBy(() -> FrameReader.read(packed, "dusk.fits.gz", DecodeOptions.DEFAULT))
                .isInstanceOf(InputRefused.class)
                .hasMessageContaining("it is damaged");
    }

    @Test
    void gzippedText_isNotAFrame() {
        byte[] packed = gzipped("Seeing was poor until midnight.".getBytes(StandardCharsets.US_ASCII));
        assertThat(FrameCompleteness.of(packed, "notes.txt.gz", DecodeDeadline.NONE))
                .isEqualTo(new NotAFrame());
    }

    /** 20 MB of zeros in 20 kB. */
    @Test
    void fileThatExpandsBeyondTheLimit_isRefused() {
        byte[] image = TinyFits.image(16, 4000, 2500).data(new byte[20_000_000]).bytes();
        DecodeLimits small = new DecodeLimits(64_000_000, 10_000_000, 0.5, DecodeLimits.OF_A_FILE.longest());
        assertThatThrownBy(
                        () -> FrameReader.read(gzipped(image), "dusk.fits.gz", DecodeOptions.DEFAULT.withLimits(small)))
                .isInstanceOf(InputRefused.class)
                .hasMessage("dusk.fits.gz: unpacked it is more than 10 MB. Save it binned or cropped.");
    }

    @Test
    void fileGzippedTwice_isRefused() {
        byte[] twice = gzipped(gzipped(Authority.file("fits/uint16.fits")));
        assertThatThrownBy(() -> FrameReader.read(twice, "dusk.fits.gz.gz", DecodeOptions.DEFAULT))
                .isInstanceOf(InputRefused.class)
                .hasMessage("dusk.fits.gz.gz: it is packed by gzip twice. Unpack it first.");
    }
}
