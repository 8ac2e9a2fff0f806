package polewright.image.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.time.Duration;
import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.sky.InputRefused;

/** Files damaged at random, from fixed seeds: each gives a frame or a one-line refusal, in limited time and memory. */
@Tag("slow")
class DamagedFilesTest {
    private static final int CASES = 300;
    // A whole file takes a millisecond; this detects a hang, not slowness.
    private static final Duration LONGEST = Duration.ofSeconds(60);
    /** For a file of a few kilobytes: its claims must not cost more than it can contain. */
    private static final long MOST_BYTES = 100_000_000;

    static Stream<String> files() {
        return Stream.of(
                "fits/uint8.fits",
                "fits/uint16.fits",
                "fits/float32.fits",
                "fits/float64.fits",
                "fits/scaled.fits",
                "fits/colour.fits",
                "fits/extension.fits",
                "fits/rice.fits",
                "fits/gzip1.fits",
                "fits/gzip2.fits",
                "fits/hcompress.fits",
                "fits/plio.fits",
                "fits/rice-tiles.fits",
                "fits/rice-float.fits",
                "pictures/grey16.png",
                "pictures/colour8.png",
                "pictures/palette.png",
                "pictures/exif.png",
                "pictures/grey16.tiff",
                "pictures/grey16-strips.tiff",
                "pictures/grey16-tiles.tiff",
                "pictures/grey16-lzw.tiff",
                "pictures/grey16-deflate.tiff",
                "pictures/grey16-packbits.tiff",
                "pictures/colour16-planes.tiff",
                "pictures/float32.tiff",
                "pictures/exif.tiff",
                "pictures/grey.jpg",
                "pictures/colour.jpg",
                "pictures/progressive.jpg",
                "pictures/exif-zone.jpg",
                "pictures/exif-receiver.jpg");
    }

    @ParameterizedTest
    @MethodSource("files")
    void damagedFile_givesAFrameOrOneLine(String name) {
        byte[] whole = Authority.file(name);
        SplittableRandom random = new SplittableRandom(name.hashCode());
        for (int i = 0; i < CASES; i++) {
            byte[] damaged = damaged(whole, random);
            String seen = name + " case " + i;
            assertTimeoutPreemptively(LONGEST, () -> assertFrameOrOneLine(damaged, seen), seen);
        }
    }

    /** Bits flipped, mostly in the headers; or truncated; or a range overwritten. */
    private static byte[] damaged(byte[] whole, SplittableRandom random) {
        byte[] bytes = whole.clone();
        switch (random.nextInt(4)) {
            case 0 -> {
                return Arrays.copyOf(bytes, random.nextInt(bytes.length));
            }
            case 1 -> {
                int at = random.nextInt(bytes.length);
                int end = Math.min(bytes.length, at + 1 + random.nextInt(40));
                Arrays.fill(bytes, at, end, (byte) random.nextInt(256));
            }
            default -> {
                int within = random.nextBoolean() ? bytes.length : Math.min(bytes.length, 400);
                int flips = 1 + random.nextInt(4);
                for (int i = 0; i < flips; i++) {
                    bytes[random.nextInt(within)] ^= (byte) (1 << random.nextInt(8));
                }
            }
        }
        return bytes;
    }

    private static void assertFrameOrOneLine(byte[] bytes, String seen) {
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long before = threads.getCurrentThreadAllocatedBytes();
        assertThatCode(() -> FrameCompleteness.of(bytes, "dusk", DecodeDeadline.NONE))
                .as(seen)
                .doesNotThrowAnyException();
        try {
            assertThat(FrameReader.read(bytes, "dusk", DecodeOptions.DEFAULT).pixels())
                    .as(seen)
                    .isNotEmpty();
        } catch (InputRefused e) {
            assertThat(e.getMessage())
                    .as(seen)
                    .startsWith("dusk: ")
                    .doesNotContain("\n")
                    .doesNotContain("memory");
        }
        assertThat(threads.getCurrentThreadAllocatedBytes() - before).as(seen).isLessThan(MOST_BYTES);
    }
}
