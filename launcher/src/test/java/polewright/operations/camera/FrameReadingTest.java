package polewright.operations.camera;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.image.Frame;
import polewright.image.FrameFacts;
import polewright.image.decode.DecodeOptions;
import polewright.image.decode.Mosaic;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.body.SolarSystemBody;

/** Which frames belong together, and what needs a time. */
class FrameReadingTest {
    private static final ExposureTime BY_THE_FILE = ExposureTime.ifKnown(Optional.empty());

    @TempDir
    private static Path folder;

    private static FrameReading reading;
    private static Frame picture;
    private static PlacedFrame first;

    @BeforeAll
    static void solveFirstFrame() {
        picture = CameraEvening.atLarkfell().take().frame();
        reading = new FrameReading(Clock.fixed(CameraEvening.EVENING, ZoneOffset.UTC));
        first = place("first.fits", picture, near(new NearPlace.Pole(Optional.of(true))), Optional.empty());
    }

    private static FrameClues near(NearPlace place) {
        return new FrameClues(
                Optional.of(place),
                Angle.ofDegrees(25),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                DecodeOptions.DEFAULT);
    }

    private static PlacedFrame place(String name, Frame frame, FrameClues clues, Optional<PlacedFrame> earlier) {
        FrameFile file = FrameFile.read(CameraEvening.write(folder.resolve(name), frame));
        return reading.place(file, clues, BY_THE_FILE, earlier);
    }

    private static Frame mirrored() {
        int width = picture.width();
        float[] pixels = new float[width * picture.height()];
        for (int i = 0; i < pixels.length; i++) {
            pixels[i] = picture.pixels()[i - i % width + width - 1 - i % width];
        }
        return new Frame(width, picture.height(), pixels, picture.saturation(), picture.facts());
    }

    /** The middle half of the picture with each pixel doubled in both directions, as with twice the focal length. */
    private static Frame enlarged() {
        int width = picture.width();
        int height = picture.height();
        float[] pixels = new float[width * height];
        for (int i = 0; i < pixels.length; i++) {
            int x = width / 4 + i % width / 2;
            int y = height / 4 + i / width / 2;
            pixels[i] = picture.pixels()[y * width + x];
        }
        FrameFacts facts = picture.facts();
        return CameraEvening.with(
                new Frame(width, height, pixels, picture.saturation(), facts),
                new FrameFacts(
                        facts.middle(),
                        facts.localMiddle(),
                        facts.exposure(),
                        OptionalDouble.of(2 * facts.focalLengthMm().orElseThrow()),
                        facts.pixelMicrons(),
                        facts.camera()));
    }

    /** Pictures are drawn from the file, read in the same way. */
    @Test
    void readingOptions_areKept() {
        DecodeOptions result = DecodeOptions.DEFAULT.withMosaic(Mosaic.NONE);
        FrameClues clues = new FrameClues(
                Optional.of(new NearPlace.Pole(Optional.of(true))),
                Angle.ofDegrees(25),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                result);
        assertThat(place("told.fits", picture, clues, Optional.empty()).decoding())
                .isEqualTo(result);
    }

    @Test
    void mirroredFrame_isFromAnotherCamera() {
        assertThatThrownBy(() -> place(
                        "mirrored.fits", mirrored(), near(new NearPlace.Pole(Optional.of(true))), Optional.of(first)))
                .isInstanceOf(InputRefused.class)
                .hasMessage("mirrored.fits: this frame and first.fits are from different cameras or focal lengths (one"
                        + " is mirrored). Use one camera's.");
    }

    @Test
    void frameOfAnotherScale_isFromAnotherFocalLength() {
        assertThatThrownBy(() -> place(
                        "enlarged.fits", enlarged(), near(new NearPlace.Pole(Optional.of(true))), Optional.of(first)))
                .isInstanceOf(InputRefused.class)
                .hasMessageMatching("enlarged\\.fits: this frame and first\\.fits are from different cameras or focal"
                        + " lengths \\(20\\.\\d\\d″ and 10\\.\\d\\d″ per pixel\\). Use one camera's\\.");
    }

    @Test
    void withoutATime_movingBodiesAreNotIdentified() {
        Frame timeless = CameraEvening.with(picture, CameraEvening.timeless(picture.facts()));
        assertThatThrownBy(() -> place(
                        "timeless.fits", timeless, near(new NearPlace.Body(SolarSystemBody.MOON)), Optional.empty()))
                .isInstanceOf(InputRefused.class)
                .hasMessage("timeless.fits: --near the Moon needs the time of exposure, which the file does not give."
                        + " Give the middle of the exposure with --at, such as --at 2026-11-25T20:00Z.");
        PlacedFrame placed =
                place("timeless.fits", timeless, near(new NearPlace.Pole(Optional.of(true))), Optional.empty());
        assertThat(placed.remarks())
                .contains("the file gives no time, so the present time is used (--at gives another).");
    }
}
