package polewright.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import polewright.drawing.Palette;
import polewright.drawing.zone.ZoneDrawing;
import polewright.drawing.zone.ZoneScene;
import polewright.operations.Workbench;
import polewright.report.scene.NightScene;
import polewright.report.text.ZoneText;
import polewright.session.NightState;

/** Whether to draw the zone with the fix and the path of the axis. */
final class ZonePictureOption {
    @Option(
            names = "--picture",
            paramLabel = "FILE.svg",
            description = "Also draw the zone, where the axis is, and where it was.")
    private @Nullable Path file;

    @Option(names = "--dark", description = "Draw in dim red on black.")
    private boolean dark;

    @Option(names = "--draw", description = "Draw it in the terminal, in characters.")
    private boolean inLetters;

    /** Draws it if requested. */
    void draw(Workbench workbench, Output output, NightState night) {
        if (file == null && !inLetters) {
            return;
        }
        ZoneScene scene = NightScene.of(night);
        if (inLetters && !output.isJson()) {
            output.say(workbench, "");
            output.show(workbench, ZoneText.of(scene));
        }
        if (file != null) {
            ResultFile.write(file, ZoneDrawing.svg(scene, palette()).getBytes(StandardCharsets.UTF_8));
            output.mention(workbench, "Drawn: " + file);
        }
    }

    Palette palette() {
        return dark ? Palette.DARK : Palette.LIGHT;
    }
}
