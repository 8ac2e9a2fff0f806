package polewright.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import polewright.image.Frame;
import polewright.operations.Workbench;
import polewright.operations.camera.FrameDecoding;
import polewright.operations.camera.FrameFile;
import polewright.operations.camera.PlacedFrame;
import polewright.operations.picture.FramePicture;
import polewright.operations.picture.PointMark;

/** Whether to draw a frame. */
final class PictureOption {
    @Option(
            names = "--picture",
            paramLabel = "FILE",
            description = "Draw the frame as a PNG with its stars, the pole, and the axis if known.")
    private @Nullable Path file;

    boolean isAsked() {
        return file != null;
    }

    /**
     * Draws it if requested.
     *
     * @param words caption below the picture, in addition to the description of the frame
     */
    void draw(
            Workbench workbench,
            Output output,
            PlacedFrame placed,
            PointMark pole,
            Optional<PointMark> axis,
            List<String> words) {
        if (file == null) {
            return;
        }
        FrameFile read = FrameFile.read(placed.file());
        Frame frame = FrameDecoding.read(read.content(), read.name(), placed.decoding());
        List<String> lines = new ArrayList<>();
        lines.add(placed.name() + placed.at().map(PictureOption::dateAndTime).orElse(""));
        lines.add(String.format(
                Locale.ROOT,
                "%d of %d stars matched; %.2f″ per pixel%s",
                placed.match().starsMatched(),
                placed.match().starsFound(),
                placed.match().plate().scale().arcseconds(),
                placed.mirroredAsDrawn() ? "; mirrored" : ""));
        lines.addAll(words);
        ResultFile.write(file, FramePicture.png(frame, placed, pole, axis, lines));
        output.mention(workbench, "Drawn: " + file);
    }

    private static String dateAndTime(Instant at) {
        String utc = at.toString();
        return ", " + utc.substring(0, 10) + " " + utc.substring(11, 19) + " UTC";
    }
}
