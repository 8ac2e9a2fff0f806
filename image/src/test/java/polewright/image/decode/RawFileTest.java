package polewright.image.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.LocalDateTime;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import polewright.image.Frame;
import polewright.sky.InputRefused;

/** Raw files, here small substitutes with the same structure (TIFF/EP, ISO 12234-2, and the makers' practice). */
class RawFileTest {
    private static final int WIDTH = 720;
    private static final int HEIGHT = 480;
    private static final byte[] PREVIEW = Pictures.jpeg(WIDTH, HEIGHT);
    private static final byte[] THUMBNAIL = Pictures.jpeg(160, 120);
    private static final byte[] DETECTOR = detector();

    private static final int COLOUR_FILTER_ARRAY = 32_803;
    private static final int RGB = 2;

    /** Noise, like compressed detector values, containing the first bytes of a JPEG by chance. */
    private static byte[] detector() {
        byte[] bytes = new byte[40_000];
        new SplittableRandom(3).nextBytes(bytes);
        bytes[1000] = (byte) 0xff;
        bytes[1001] = (byte) 0xd8;
        bytes[1002] = (byte) 0xff;
        return bytes;
    }

    private static int exif(TinyTiff tiff) {
        return tiff.directory(
                tiff.rational(0x829a, 30, 1),
                tiff.text(0x9003, "2026:11:25 21:00:00"),
                tiff.rational(0x920a, 135, 1),
                tiff.rational(0xa20e, 2500, 1),
                tiff.shorts(0xa210, 3));
    }

    private static TinyTiff.Field[] thumbnail(TinyTiff tiff, int... subDirectories) {
        byte[] pixels = new byte[160 * 120 * 3];
        return new TinyTiff.Field[] {
            tiff.longs(0xfe, 1),
            tiff.longs(0x100, 160),
            tiff.longs(0x101, 120),
            tiff.shorts(0x102, 8, 8, 8),
            tiff.shorts(0x103, 1),
            tiff.shorts(0x106, RGB),
            tiff.text(0x110, "Larkfell camera"),
            tiff.longs(0x111, tiff.add(pixels)),
            tiff.shorts(0x115, 3),
            tiff.longs(0x116, 120),
            tiff.longs(0x117, pixels.length),
            tiff.longs(0x14a, subDirectories),
            tiff.longs(0x8769, exif(tiff)),
        };
    }

    private static int detectorDirectory(TinyTiff tiff) {
        return tiff.directory(
                tiff.longs(0xfe, 0),
                tiff.longs(0x100, 2 * WIDTH),
                tiff.longs(0x101, 2 * HEIGHT),
                tiff.shorts(0x103, 34_713),
                tiff.shorts(0x106, COLOUR_FILTER_ARRAY),
                tiff.longs(0x111, tiff.add(DETECTOR)),
                tiff.longs(0x117, DETECTOR.length));
    }

    /** A thumbnail first, then the detector's values and a picture given by its offset, in subdirectories. */
    private static byte[] withPictureByOffset(ByteOrder order) {
        TinyTiff tiff = new TinyTiff(order);
        int picture = tiff.directory(
                tiff.longs(0xfe, 1), tiff.longs(0x201, tiff.add(PREVIEW)), tiff.longs(0x202, PREVIEW.length));
        int first = tiff.directory(thumbnail(tiff, picture, detectorDirectory(tiff)));
        return tiff.file(order == ByteOrder.BIG_ENDIAN ? "MM\0*" : "II*\0", first);
    }

    /** As in the open raw format: the picture is the single strip of a subdirectory. */
    private static byte[] withPictureAsStrip() {
        TinyTiff tiff = new TinyTiff(ByteOrder.LITTLE_ENDIAN);
        int picture = tiff.directory(
                tiff.longs(0xfe, 1),
                tiff.longs(0x100, WIDTH),
                tiff.longs(0x101, HEIGHT),
                tiff.shorts(0x103, 7),
                tiff.shorts(0x106, 6),
                tiff.longs(0x111, tiff.add(PREVIEW)),
                tiff.longs(0x117, PREVIEW.length));
        return tiff.file("II*\0", tiff.directory(thumbnail(tiff, detectorDirectory(tiff), picture)));
    }

    /** The directories give only a thumbnail; the picture is somewhere in a maker's own block. */
    private static byte[] withPictureThatNoDirectoryNames(String magic) {
        TinyTiff tiff = new TinyTiff(ByteOrder.LITTLE_ENDIAN);
        tiff.add(PREVIEW);
        int first = tiff.directory(
                tiff.longs(0x100, 2 * WIDTH),
                tiff.longs(0x101, 2 * HEIGHT),
                tiff.shorts(0x103, 1),
                tiff.text(0x110, "Larkfell camera"),
                tiff.longs(0x111, tiff.add(DETECTOR)),
                tiff.longs(0x117, DETECTOR.length),
                tiff.longs(0x201, tiff.add(THUMBNAIL)),
                tiff.longs(0x202, THUMBNAIL.length),
                tiff.longs(0x8769, exif(tiff)));
        return tiff.file(magic, first);
    }

    private static byte[] withThumbnailOnly() {
        TinyTiff tiff = new TinyTiff(ByteOrder.LITTLE_ENDIAN);
        int picture = tiff.directory(tiff.longs(0x201, tiff.add(THUMBNAIL)), tiff.longs(0x202, THUMBNAIL.length));
        return tiff.file("II*\0", tiff.directory(thumbnail(tiff, picture, detectorDirectory(tiff))));
    }

    private static Frame read(byte[] file, String name) {
        return FrameReader.read(file, name, DecodeOptions.DEFAULT);
    }

    private static void assertIsThePreview(Frame frame) {
        assertThat(frame.width()).isEqualTo(WIDTH);
        assertThat(frame.height()).isEqualTo(HEIGHT);
        assertThat(frame.pixels()[HEIGHT / 2 * WIDTH + WIDTH / 2]).isGreaterThan(150);
        assertThat(frame.facts().exposure()).contains(Duration.ofSeconds(30));
        assertThat(frame.facts().localMiddle()).contains(LocalDateTime.parse("2026-11-25T21:00:15"));
        assertThat(frame.facts().focalLengthMm()).hasValue(135);
        // 4 micrometres on a detector with twice as many columns as the preview.
        assertThat(frame.facts().pixelMicrons().orElseThrow()).isCloseTo(8, within(1e-9));
        assertThat(frame.facts().camera()).contains("Larkfell camera");
    }

    @Test
    void embeddedPicture_isUsedInsteadOfTheThumbnail() {
        assertIsThePreview(read(withPictureByOffset(ByteOrder.LITTLE_ENDIAN), "dusk.nef"));
        assertIsThePreview(read(withPictureByOffset(ByteOrder.BIG_ENDIAN), "dusk"));
        assertIsThePreview(read(withPictureAsStrip(), "dusk.dng"));
        assertIsThePreview(read(withPictureAsStrip(), "renamed.tif"));
    }

    @Test
    void pictureOutsideTheDirectories_isFound() {
        assertIsThePreview(read(withPictureThatNoDirectoryNames("IIRO"), "dusk.orf"));
        assertIsThePreview(read(withPictureThatNoDirectoryNames("IIRS"), "renamed"));
        assertIsThePreview(read(withPictureThatNoDirectoryNames("II*\0"), "dusk.pef"));
    }

    @Test
    void pictureInAFileOfAnotherStructure_isFoundByItsExtension() {
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        file.writeBytes("some camera's own block".getBytes(StandardCharsets.US_ASCII));
        file.writeBytes(THUMBNAIL);
        file.writeBytes(PREVIEW);
        file.writeBytes(DETECTOR);
        Frame frame = read(file.toByteArray(), "DUSK.RAF");
        assertThat(frame.width()).isEqualTo(WIDTH);
        assertThatThrownBy(() -> read(file.toByteArray(), "dusk.bin")).isInstanceOf(InputRefused.class);
    }

    @Test
    void rawFileWithOnlyAThumbnail_isRefused() {
        assertThatThrownBy(() -> read(withThumbnailOnly(), "dusk.nef"))
                .isInstanceOf(InputRefused.class)
                .hasMessage("dusk.nef: the largest preview in this raw file is only 160 by 120 pixels."
                        + " Let the camera save JPEG as well, or convert the file to TIFF or FITS.");
    }

    @Test
    void rawFileWithoutAPicture_isRefused() {
        TinyTiff tiff = new TinyTiff(ByteOrder.LITTLE_ENDIAN);
        byte[] file = tiff.file("II*\0", detectorDirectory(tiff));
        assertThatThrownBy(() -> read(file, "dusk.tif"))
                .isInstanceOf(InputRefused.class)
                .hasMessage("dusk.tif: this raw file has no readable JPEG preview."
                        + " Let the camera save JPEG as well, or convert the file to TIFF or FITS.");
    }
}
