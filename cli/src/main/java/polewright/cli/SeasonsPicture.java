package polewright.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import polewright.drawing.Palette;
import polewright.operations.Workbench;
import polewright.operations.input.FileInput;
import polewright.planning.seasons.Seasons;
import polewright.report.scene.SeasonsScene;

/** Whether to draw how the axis moved from night to night. */
final class SeasonsPicture {
    @Option(
            names = "--picture",
            paramLabel = "FILE.svg",
            converter = FileInput.class,
            description = "Draw the motion of the axis, east and up, with the trend.")
    private @Nullable Path file;

    @Option(names = "--dark", description = "Draw in dim red on black.")
    private boolean dark;

    /** Draws it if requested and there is anything to draw. */
    void draw(Workbench workbench, Output output, Seasons seasons) {
        if (file == null) {
            return;
        }
        if (seasons instanceof Seasons.Compared compared) {
            String svg = SeasonsScene.svg(compared, dark ? Palette.DARK : Palette.LIGHT);
            ResultFile.write(file, svg.getBytes(StandardCharsets.UTF_8));
            output.mention(workbench, "Drawn: " + file);
        } else {
            output.mention(workbench, "No drawing: there is nothing to compare yet.");
        }
    }
}
