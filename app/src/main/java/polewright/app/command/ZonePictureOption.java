package polewright.app.command;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import polewright.app.Workbench;
import polewright.night.NightState;

/** Whether to draw the zone. */
final class ZonePictureOption {
    @Option(names = "--picture", paramLabel = "FILE.svg", description = "Also draw the zone, the fix and its path.")
    private @Nullable Path file;

    @Option(names = "--dark", description = "Draw in dim red on black.")
    private boolean dark;

    /** Draws it if that was asked for. */
    void draw(Workbench workbench, Output output, NightState night) {}
}
