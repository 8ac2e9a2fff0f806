package polewright.image.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.sky.InputRefused;

/** Impossible numbers in a file's header: refused by name, immediately, before memory is allocated. */
class LyingHeadersTest {
    // A refusal takes a millisecond; this detects a hang, not slowness.
    private static final Duration LONGEST = Duration.ofSeconds(20);
    private static final long MOST_BYTES = 30_000_000;

    static Stream<Arguments> impossibleNumbers() {
        return Authority.lines("lying-headers/truth.csv").stream()
                .map(line -> Arguments.of((Object[]) line.split(",")));
    }

    @ParameterizedTest
    @MethodSource("impossibleNumbers")
    void impossibleNumber_isRefusedWithItsLimits(String file, String keyword, String value, String least, String most) {
        assertRefused(
                Authority.file("lying-headers/" + file),
                "dusk: its header says " + keyword + " = " + value + ", and the limits are " + least + " and " + most
                        + ". Copy it again, or take another frame.");
    }

    @ParameterizedTest
    @MethodSource("impossibleNumbers")
    void impossibleNumber_isNotWaitedFor(String file) {
        assertThat(FrameCompleteness.of(Authority.file("lying-headers/" + file), file, DecodeDeadline.NONE))
                .isEqualTo(new FrameCompleteness.Whole());
    }

    /** Each a valid compressed file except for one card. */
    @ParameterizedTest
    @CsvSource({
        "rice.fits, NAXIS   , -1, 'its header says NAXIS = -1, and the limits are 0 and 999'",
        "rice.fits, NAXIS   , 3, 'its header has no NAXIS3'",
        "rice.fits, NAXIS1  , 0, 'its table of compressed tiles is damaged'",
        "rice.fits, NAXIS2  , -12, 'its header says NAXIS2 = -12, and the least possible is 0'",
        "rice.fits, PCOUNT  , -1, 'its header says PCOUNT = -1, and the least possible is 0'",
        "extension.fits, GCOUNT  , 0, 'its header says GCOUNT = 0, and the least possible is 1'",
        "rice.fits, GCOUNT  , 2, 'its header says GCOUNT = 2, and only 1 is possible there'",
        "rice.fits, TFIELDS , 2147483647, 'its header says TFIELDS = 2147483647, and the limits are 1 and 999'",
        "rice.fits, ZNAXIS1 , 0, 'its header says ZNAXIS1 = 0, and the least possible is 1'",
        "rice.fits, ZNAXIS1 , 9223372036854775808, 'its header says ZNAXIS1 = 9223372036854775808, and the most"
                + " possible'",
        "rice.fits, ZTILE1  , 17, 'its header says ZTILE1 = 17, and the limits are 1 and 16'",
        "rice.fits, ZTILE1  , 0, 'its header says ZTILE1 = 0, and the limits are 1 and 16'",
        "rice.fits, ZTILE2  , 2147483648, 'its header says ZTILE2 = 2147483648, and the limits are 1 and 12'",
        "rice.fits, ZBITPIX , 12, 'its pixels are of ZBITPIX 12, which FITS does not define'",
        "uint16.fits, NAXIS1, -16, 'its header says NAXIS1 = -16, and the least possible is 0'",
        "uint16.fits, BITPIX, 4294967312, 'its header says BITPIX = 4294967312, and the limits are -64 and 64'",
    })
    void cardOutOfRange_isRefusedWithItsLimits(String file, String keyword, String value, String message) {
        byte[] content = withCard(Authority.file("fits/" + file), keyword, value);
        assertThatThrownBy(() -> read(content)).isInstanceOf(InputRefused.class).hasMessageContaining(message);
    }

    private static byte[] withCard(byte[] content, String keyword, String value) {
        String text = new String(content, StandardCharsets.ISO_8859_1);
        int at = text.lastIndexOf(String.format("%-8s=", keyword.strip()));
        assertThat(at).as(keyword).isNotNegative();
        byte[] changed = content.clone();
        byte[] card =
                String.format("%-8s= %20s%50s", keyword.strip(), value, "").getBytes(StandardCharsets.US_ASCII);
        System.arraycopy(card, 0, changed, at, card.length);
        return changed;
    }

    /** A tile of this kind repeats its own size; the library would allocate 268 MB for these 11 kB. */
    @Test
    void hcompressTileWithASizeUnlikeItsHeader_isRefused() {
        byte[] content = Authority.file("fits/hcompress.fits");
        int at = indexOf(content, (byte) 0xdd, (byte) 0x99);
        ByteBuffer.wrap(content).putInt(at + 2, 65_536).putInt(at + 6, 65_536);
        assertRefused(content, "dusk: its table of compressed tiles is damaged. Copy it again, or take another frame.");
    }

    /** Every tile points at the same bytes: the library would copy them once for each. */
    @Test
    void tilesThatShareTheirBytes_areRefused() {
        byte[] content = Authority.file("fits/gzip1.fits");
        ByteBuffer table = ByteBuffer.wrap(content, 5760, content.length - 5760).slice();
        int heap = 12 * 8;
        for (int row = 0; row < 12; row++) {
            table.putInt(row * 8, 200).putInt(row * 8 + 4, 0);
        }
        assertThat(heap + 200).isLessThan(content.length - 5760);
        assertRefused(content, "dusk: its table of compressed tiles is damaged. Copy it again, or take another frame.");
    }

    /** One tile of 100 million pixels in 11 kB. */
    @Test
    void imageThatItsTilesCannotHold_isRefused() {
        byte[] content = withCard(Authority.file("fits/rice.fits"), "ZNAXIS1", "10000");
        byte[] rows = withCard(content, "ZTILE1", "10000");
        assertThatThrownBy(() -> read(withCard(rows, "ZNAXIS2", "10000")))
                .isInstanceOf(InputRefused.class)
                .hasMessageContaining("it says it has 10000 by 10000 pixels, and has only ");
    }

    private static int indexOf(byte[] content, byte first, byte second) {
        for (int at = 0; at + 1 < content.length; at++) {
            if (content[at] == first && content[at + 1] == second) {
                return at;
            }
        }
        throw new AssertionError("no such bytes");
    }

    private static void assertRefused(byte[] content, String message) {
        assertThatThrownBy(() -> read(content)).isInstanceOf(InputRefused.class).hasMessage(message);
    }

    private static void read(byte[] content) {
        assertTimeoutPreemptively(LONGEST, () -> {
            ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
            long before = threads.getCurrentThreadAllocatedBytes();
            try {
                FrameReader.read(content, "dusk", DecodeOptions.DEFAULT);
            } finally {
                assertThat(threads.getCurrentThreadAllocatedBytes() - before).isLessThan(MOST_BYTES);
            }
        });
    }
}
