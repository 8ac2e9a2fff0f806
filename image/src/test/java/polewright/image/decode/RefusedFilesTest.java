package polewright.image.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.image.Frame;
import polewright.sky.InputRefused;

/** Files without a frame: each is refused with one line that says what to do. */
class RefusedFilesTest {
    private static void assertRefused(byte[] content, String name, String message) {
        assertRefused(content, name, DecodeOptions.DEFAULT, message);
    }

    private static void assertRefused(byte[] content, String name, DecodeOptions options, String message) {
        assertThatThrownBy(() -> FrameReader.read(content, name, options))
                .isInstanceOf(InputRefused.class)
                .hasMessage(message);
    }

    private static byte[] text(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }

    private static byte[] fits(String name) {
        return Authority.file("fits/" + name);
    }

    private static byte[] picture(String name) {
        return Authority.file("pictures/" + name);
    }

    private static byte[] shortened(byte[] content, int bytes) {
        return Arrays.copyOf(content, bytes);
    }

    @Test
    void emptyFile_isRefused() {
        assertRefused(
                new byte[0],
                "dusk.fits",
                "dusk.fits: the file is empty. Wait until it is saved, or take the frame again.");
    }

    @Test
    void textFileAndZeros_areRefused() {
        String remedy = ": this is not a supported image. Give FITS, TIFF, PNG, JPEG, or a raw file with a full-size"
                + " preview.";
        assertRefused(text("Seeing was poor until midnight.\n"), "notes.txt", "notes.txt" + remedy);
        assertRefused(new byte[10_000], "dusk.fits", "dusk.fits" + remedy);
        assertRefused(text("X"), "dusk.fits", "dusk.fits" + remedy);
    }

    @Test
    void otherPictureFormats_areRefused() {
        assertRefused(
                text("\0\0\0\30ftypheic"),
                "dusk.heic",
                "dusk.heic: it is a HEIF picture, which is not supported. Save it as JPEG, TIFF or FITS.");
        assertRefused(
                text("II+\0\10\0\0\0"),
                "dusk.tif",
                "dusk.tif: it is a BigTIFF, which is not supported. Save it as plain TIFF or FITS.");
    }

    @Test
    void fitsFileTruncatedInItsPixels_isRefused() {
        assertRefused(
                shortened(fits("uint16.fits"), 3000),
                "dusk.fits",
                "dusk.fits: it says it has 16 by 12 pixels, 384 bytes, and only 120 are present."
                        + " Wait until it is fully saved, or take the frame again.");
    }

    @ParameterizedTest
    @ValueSource(ints = {9, 80, 200, 400})
    void fitsFileTruncatedInItsHeader_isRefused(int bytes) {
        assertRefused(
                shortened(fits("uint16.fits"), bytes),
                "dusk.fits",
                "dusk.fits: its header is incomplete. Wait until it is fully saved, or take the frame again.");
    }

    @Test
    void fitsFileTruncatedInItsTiles_isRefused() {
        assertRefused(
                shortened(fits("rice.fits"), 6000),
                "dusk.fits",
                "dusk.fits: it says it has 16 by 12 pixels, 319 bytes, and only 240 are present."
                        + " Wait until it is fully saved, or take the frame again.");
    }

    @Test
    void fitsFileWithoutPaddingOfItsLastBlock_isRead() {
        Frame frame = FrameReader.read(shortened(fits("uint16.fits"), 2880 + 384), "dusk.fits", DecodeOptions.DEFAULT);
        assertThat(frame.width()).isEqualTo(16);
    }

    @Test
    void fitsFileWithoutAnImage_isRefused() {
        String message = "dusk.fits: there is no image in this FITS file. Give a file with a frame in it.";
        assertRefused(fits("no-image.fits"), "dusk.fits", message);
        assertRefused(TinyFits.image(8).bytes(), "dusk.fits", message);
        assertRefused(TinyFits.image(16, 100).data(new byte[200]).bytes(), "dusk.fits", message);
    }

    @Test
    void headerWithAThousandMillionPixels_isRefused() {
        assertRefused(
                TinyFits.image(16, 40_000, 25_000).bytes(),
                "dusk.fits",
                "dusk.fits: it says it has 40000 by 25000 pixels, 2000000000 bytes, and only 0 are present."
                        + " Wait until it is fully saved, or take the frame again.");
        assertThatThrownBy(() -> FrameReader.read(
                        TinyFits.image(-64, Integer.MAX_VALUE, Integer.MAX_VALUE, 3)
                                .bytes(),
                        "dusk.fits",
                        DecodeOptions.DEFAULT))
                .isInstanceOf(InputRefused.class)
                .hasMessageStartingWith("dusk.fits: it says it has 2147483647 by 2147483647 pixels");
    }

    @Test
    void frameOverTheLimit_isRefused() {
        DecodeOptions small = DecodeOptions.DEFAULT.withLimits(DecodeLimits.OF_A_FILE.withMostPixels(1_000_000));
        assertRefused(
                TinyFits.image(8, 2000, 1000).data(new byte[2_000_000]).bytes(),
                "dusk.fits",
                small,
                "dusk.fits: it says it has 2000 by 1000 pixels, more than the limit of 1 million."
                        + " If that is right, save it binned or cropped; if not, the file is damaged.");
        assertRefused(
                Pictures.jpeg(2000, 1000),
                "dusk.jpg",
                small,
                "dusk.jpg: it says it has 2000 by 1000 pixels, more than the limit of 1 million."
                        + " If that is right, save it binned or cropped; if not, the file is damaged.");
    }

    /** A few hundred bytes that would expand to 3.6 thousand million pixels. */
    @Test
    void smallPictureThatClaimsMoreThanItsBytesCanHold_isRefused() {
        byte[] png = picture("grey8.png");
        // Width and height follow the signature and the first chunk's length and name.
        for (int at : new int[] {16, 20}) {
            png[at + 1] = 0;
            png[at + 2] = (byte) 0xea;
            png[at + 3] = 0x60;
        }
        assertRefused(
                png,
                "dusk.png",
                "dusk.png: it says it has 60000 by 60000 pixels, and has only 216 bytes."
                        + " Copy it again from the camera, or take another frame.");
    }

    /** The library would allocate as many bytes as the table says. */
    @Test
    void tileTableThatPointsBeyondItsHeap_isRefused() {
        byte[] tiles = fits("gzip1.fits");
        // The byte count of the first tile: the first word of the data of the second HDU.
        tiles[5760] = 0x7c;
        assertRefused(
                tiles,
                "dusk.fits",
                "dusk.fits: its table of compressed tiles is damaged. Copy it again, or take another frame.");
    }

    @Test
    void stackOfFrames_isRefused() {
        assertRefused(
                TinyFits.image(8, 16, 12, 20).data(new byte[16 * 12 * 20]).bytes(),
                "dusk.fits",
                "dusk.fits: it holds a stack of 20 planes of 16 by 12 pixels."
                        + " Give single frames: one plane, or three of colour.");
    }

    /** At the end of such a picture the library throws an exception for each missing row. */
    @ParameterizedTest
    @ValueSource(ints = {2, 3, 4})
    void tiffWithFaxCompression_isRefused(int compression) {
        TinyTiff tiff = new TinyTiff(ByteOrder.LITTLE_ENDIAN);
        byte[] strip = new byte[64];
        int picture = tiff.directory(
                tiff.longs(0x100, 16),
                tiff.longs(0x101, 28_483),
                tiff.shorts(0x102, 1),
                tiff.shorts(0x103, compression),
                tiff.shorts(0x106, 1),
                tiff.longs(0x111, tiff.add(strip)),
                tiff.longs(0x117, strip.length));
        assertRefused(
                tiff.file("II*\0", picture),
                "fax.tif",
                "fax.tif: it uses fax compression, black and white only, without brightness. Save it in grey or"
                        + " colour, or as FITS.");
    }

    @Test
    void unknownFitsPixelType_isRefused() {
        assertRefused(
                TinyFits.image(24, 16, 12).data(new byte[16 * 12 * 3]).bytes(),
                "dusk.fits",
                "dusk.fits: its pixels are of BITPIX 24, which FITS does not define. Take the frame again.");
    }

    @Test
    void truncatedPictures_areRefused() {
        String remedy = " is incomplete. Wait until it is fully saved, or copy it again.";
        assertRefused(shortened(picture("colour.jpg"), 700), "dusk.jpg", "dusk.jpg: this JPEG" + remedy);
        assertRefused(shortened(picture("colour.jpg"), 100), "dusk.jpg", "dusk.jpg: this JPEG" + remedy);
        assertRefused(shortened(picture("grey16.png"), 400), "dusk.png", "dusk.png: this PNG" + remedy);
        assertRefused(shortened(picture("grey16.png"), 8), "dusk.png", "dusk.png: this PNG" + remedy);
        assertRefused(shortened(picture("grey16.tiff"), 500), "dusk.tif", "dusk.tif: this TIFF" + remedy);
        assertRefused(shortened(picture("grey16.tiff"), 8), "dusk.tif", "dusk.tif: this TIFF" + remedy);
    }

    @ParameterizedTest
    @ValueSource(strings = {"grey.jpg", "grey16.png", "grey16.tiff", "uint16.fits"})
    void garbageAfterAValidBeginning_isRefused(String name) {
        byte[] whole = name.endsWith("fits") ? fits(name) : picture(name);
        byte[] garbage = new byte[5000];
        new Random(3).nextBytes(garbage);
        System.arraycopy(whole, 0, garbage, 0, 12);
        assertThatThrownBy(() -> FrameReader.read(garbage, name, DecodeOptions.DEFAULT))
                .isInstanceOf(InputRefused.class)
                .hasMessageStartingWith(name + ": ")
                .message()
                .doesNotContain("\n");
    }

    @Test
    void pictureOfSomethingElse_isReadAsAFrame() {
        assertThat(FrameReader.read(picture("colour.jpg"), "cat.jpg", DecodeOptions.DEFAULT)
                        .width())
                .isEqualTo(16);
    }
}
