package polewright.image.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.image.FrameFacts;

/** Metadata of pictures' Exif blocks, as written by exiftool. */
class ExifFactsTest {
    // 21:00:00.25 by the camera's clock, and half of 30 s.
    private static final LocalDateTime MIDDLE = LocalDateTime.parse("2026-11-25T21:00:15.25");

    private static FrameFacts facts(String name, DecodeOptions options) {
        return FrameReader.read(Authority.file("pictures/" + name), name, options)
                .facts();
    }

    private static FrameFacts facts(String name) {
        return facts(name, DecodeOptions.DEFAULT);
    }

    @ParameterizedTest
    @ValueSource(strings = {"exif-local.jpg", "exif.png", "exif.tiff"})
    void clockInUnknownZone_givesLocalTime(String name) {
        FrameFacts facts = facts(name);
        assertThat(facts.middle()).isEmpty();
        assertThat(facts.localMiddle()).contains(MIDDLE);
        assertThat(facts.exposure()).contains(Duration.ofSeconds(30));
        assertThat(facts.focalLengthMm()).hasValue(135);
        assertThat(facts.camera()).contains("Larkfell camera");
        assertThat(facts.remarks()).isEmpty();
    }

    @Test
    void statedZone_givesUtc() {
        FrameFacts facts = facts("exif-local.jpg", DecodeOptions.DEFAULT.withCameraZone(ZoneOffset.ofHours(13)));
        assertThat(facts.middle()).contains(Instant.parse("2026-11-25T08:00:15.25Z"));
        assertThat(facts.localMiddle()).isEmpty();
    }

    /** The only time that many converters keep (Exif 2.32, tag 0x0132). */
    @Test
    void pictureWithOnlyTheTimeOfItsLastChange_usesThat_withARemark() {
        TinyTiff exif = new TinyTiff(ByteOrder.BIG_ENDIAN);
        byte[] picture = withExif(exif.file("MM\0*", exif.directory(exif.text(0x132, "2026:11:25 21:00:00"))));
        DecodeOptions zone = DecodeOptions.DEFAULT.withCameraZone(ZoneOffset.ofHours(1));
        FrameFacts facts = FrameReader.read(picture, "dusk.jpg", zone).facts();
        assertThat(facts.middle()).contains(Instant.parse("2026-11-25T20:00:00Z"));
        assertThat(facts.remarks())
                .contains("it only gives the time of last change (DateTime), which is used as the time of exposure");
        assertThat(FrameReader.read(picture, "dusk.jpg", DecodeOptions.DEFAULT)
                        .facts()
                        .localMiddle())
                .contains(LocalDateTime.parse("2026-11-25T21:00:00"));
    }

    private static byte[] withExif(byte[] block) {
        byte[] jpeg = Pictures.jpeg(64, 48);
        return ByteBuffer.allocate(jpeg.length + 10 + block.length)
                .put(jpeg, 0, 2)
                .putShort((short) 0xffe1)
                .putShort((short) (8 + block.length))
                .put("Exif\0\0".getBytes(StandardCharsets.US_ASCII))
                .put(block)
                .put(jpeg, 2, jpeg.length - 2)
                .array();
    }

    @Test
    void zoneInTheFile_takesPrecedenceOverTheStatedOne() {
        FrameFacts facts = facts("exif-zone.jpg", DecodeOptions.DEFAULT.withCameraZone(ZoneOffset.ofHours(13)));
        assertThat(facts.middle()).contains(Instant.parse("2026-11-25T20:00:15.25Z"));
    }

    @Test
    void satelliteReceiverTime_isUtc() {
        FrameFacts facts = facts("exif-receiver.jpg");
        assertThat(facts.middle()).contains(Instant.parse("2026-11-25T20:00:17Z"));
        assertThat(facts.remarks()).isEmpty();
    }

    @Test
    void clocksThatDifferByMoreThanTheZone_areRemarked() {
        FrameFacts facts = facts("exif-receiver-far.jpg");
        assertThat(facts.middle()).contains(Instant.parse("2026-11-25T20:03:35Z"));
        assertThat(facts.remarks())
                .containsExactly("its clock and its satellite receiver differ by 200 s apart from the time zone; the"
                        + " receiver's time is used");
    }

    @Test
    void clockThatWasNeverSet_givesNoTime() {
        FrameFacts facts = facts("exif-blank.jpg");
        assertThat(facts.middle()).isEmpty();
        assertThat(facts.localMiddle()).isEmpty();
        assertThat(facts.focalLengthMm()).isEmpty();
        assertThat(facts.scalePerPixel()).isEmpty();
    }

    @Test
    void pixelSize_followsFromFocalPlaneResolutionAndColumns() {
        // 2500 per centimetre is 4 micrometres; the frame has 16 columns, the camera's picture had 32.
        assertThat(facts("exif-local.jpg").pixelMicrons()).hasValue(8);
    }

    @Test
    void pixelSize_followsFromThe35MillimetreEquivalent() {
        byte[] file = Authority.file("pictures/exif-zone.jpg");
        int exif = JpegOutline.whole(file, 0).orElseThrow().exif();
        FrameFacts facts = ExifFacts.of(TiffDirectories.of(file, exif), 6000, 4000, Optional.empty());
        // A detector 28.78 mm across its corners (43.27 × 135 / 203), 7211 pixels.
        assertThat(facts.pixelMicrons().orElseThrow()).isCloseTo(3.990, within(0.001));
    }

    @Test
    void pictureWithoutExif_hasNoFacts() {
        assertThat(facts("grey.jpg")).isEqualTo(FrameFacts.NONE);
        assertThat(facts("grey8.png")).isEqualTo(FrameFacts.NONE);
        assertThat(facts("grey16.tiff")).isEqualTo(FrameFacts.NONE);
    }
}
