package polewright.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import polewright.drawing.Palette;
import polewright.drawing.strip.ResidualDrawing;
import polewright.mount.pointing.PointingOutcome;
import polewright.mount.reach.PointingLimits;
import polewright.operations.OperationFailed;
import polewright.operations.Workbench;
import polewright.operations.input.FileInput;
import polewright.report.json.PointingJson;
import polewright.report.text.PointingWords;
import polewright.session.NightPointing;
import polewright.session.NightState;

@Command(
        name = "pointing",
        description = "Show the pointing: how well go-tos land, the mount's errors, and what to centre next.")
final class PointingCommand implements Callable<Integer> {
    private final Workbench workbench;

    @Option(
            names = "--picture",
            paramLabel = "FILE.svg",
            converter = FileInput.class,
            description = "Draw the residual at each star on the sky.")
    private @Nullable Path picture;

    @Option(names = "--dark", description = "Draw in dim red on black.")
    private boolean dark;

    @Mixin
    private LogOption log;

    @Mixin
    private Output output;

    PointingCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        NightState night = FixCommand.tonight(log, workbench);
        NightPointing pointing = NightPointing.of(night);
        if (output.isJson()) {
            output.print(workbench, PointingJson.of(night, pointing));
        } else {
            output.say(workbench, PointingWords.full(night, pointing, workbench.now()));
        }
        if (picture != null) {
            if (!(pointing.outcome() instanceof PointingOutcome.Fitted fitted)) {
                throw new OperationFailed("there is nothing to draw yet: centre a star first with polewright centre.");
            }
            PointingLimits reach =
                    PointingLimits.of(night.begun().site(), night.begun().rig(), night.horizon());
            String svg = ResidualDrawing.svg(fitted.model(), reach, dark ? Palette.DARK : Palette.LIGHT);
            ResultFile.write(picture, svg.getBytes(StandardCharsets.UTF_8));
            output.mention(workbench, "Drawn: " + picture);
        }
        return 0;
    }
}
