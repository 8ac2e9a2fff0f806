package polewright.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Option;
import polewright.drawing.Palette;
import polewright.drawing.chart.RockedFieldDrawing;
import polewright.operations.Workbench;
import polewright.operations.practice.PracticeActions;
import polewright.simulation.practice.CompletedAction;
import polewright.simulation.practice.ObservedReadings;

/** A look through an optic while the tube swings in right ascension, which may also be drawn. */
final class RockingCommand extends PracticeActionCommand {
    @Option(names = "--picture", paramLabel = "FILE.svg", description = "Also draw what is seen.")
    private @Nullable Path file;

    @Option(names = "--dark", description = "Draw in dim red on black.")
    private boolean dark;

    private RockingCommand(Workbench workbench) {
        super(workbench, PracticeActions.ROCKING);
    }

    static CommandLine of(Workbench workbench) {
        return line(new RockingCommand(workbench));
    }

    @Override
    void afterwards(CompletedAction done, Workbench bench, Output out) {
        if (file != null && done.seen() instanceof ObservedReadings.WhileRocking rocking) {
            String svg = RockedFieldDrawing.svg(
                    rocking.field(), rocking.optic().name(), dark ? Palette.DARK : Palette.LIGHT);
            ResultFile.write(file, svg.getBytes(StandardCharsets.UTF_8));
            out.mention(bench, "Drawn: " + file);
        }
    }
}
