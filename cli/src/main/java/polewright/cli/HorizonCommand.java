package polewright.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Option;
import polewright.drawing.Palette;
import polewright.drawing.strip.HorizonDrawing;
import polewright.operations.Workbench;
import polewright.operations.action.NightEntry;
import polewright.operations.setup.SkylineActions;
import polewright.report.json.HorizonJson;
import polewright.report.text.HorizonWords;
import polewright.session.NightState;

/** Sets the skyline, or shows it. */
final class HorizonCommand extends ActionCommand {
    @Option(names = "--picture", paramLabel = "FILE.svg", description = "Also draw the skyline as a panorama.")
    private @Nullable Path picture;

    @Option(names = "--dark", description = "Draw in dim red on black.")
    private boolean dark;

    private HorizonCommand(Workbench workbench) {
        super(workbench, SkylineActions.SKYLINE);
    }

    static CommandLine of(Workbench workbench) {
        CommandLine horizon = line(new HorizonCommand(workbench));
        ActionArguments.describe(horizon, "Without arguments: show it.");
        return horizon;
    }

    @Override
    public Integer call() {
        if (SkylineActions.isGiven(entries())) {
            return super.call();
        }
        NightState night = FixCommand.tonight(log(), bench());
        if (output().isJson()) {
            output().print(bench(), HorizonJson.of(night.horizon()));
        } else {
            output().say(bench(), HorizonWords.of(night.horizon()));
        }
        afterwards(night);
        return 0;
    }

    @Override
    String logged(NightEntry.Logged logged) {
        return "skyline set";
    }

    @Override
    void afterwards(NightState night) {
        if (picture != null) {
            String svg = HorizonDrawing.svg(
                    night.horizon(), night.begun().site(), night.begun().rig(), dark ? Palette.DARK : Palette.LIGHT);
            ResultFile.write(picture, svg.getBytes(StandardCharsets.UTF_8));
            output().mention(bench(), "Drawn: " + picture);
        }
    }
}
