package polewright.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import polewright.drawing.Palette;
import polewright.drawing.strip.HorizonDrawing;
import polewright.operations.Workbench;
import polewright.operations.action.ActionContext;
import polewright.operations.input.FileInput;
import polewright.operations.input.SkylineInput;
import polewright.report.json.HorizonJson;
import polewright.report.text.HorizonWords;
import polewright.session.NightState;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.place.Horizon;

@Command(
        name = "horizon",
        description = {
            "Set the skyline of the site: corners joined by straight lines.",
            "Without arguments: show it. The next night at the same site uses it too."
        },
        footer = {
            "",
            "For example:",
            "  polewright horizon 0,8 95,22.5 180,4 270,15",
            "  polewright horizon --csv garden.csv --picture skyline.svg",
            "  polewright horizon --open"
        })
final class HorizonCommand extends AppendingCommand {
    @Parameters(
            paramLabel = "AZIMUTH,ALTITUDE",
            arity = "0..*",
            description = "Degrees, azimuth from north through east. Two corners at one azimuth make a vertical edge.")
    // The parser reports a word that it cannot convert as one too many.
    private @Nullable List<String> corners;

    @Option(
            names = "--csv",
            paramLabel = "FILE",
            converter = FileInput.class,
            description = "The same from a file, one corner per line.")
    private @Nullable Path csv;

    @Option(names = "--open", description = "The sky is open all round.")
    private boolean open;

    @Option(names = "--picture", paramLabel = "FILE.svg", description = "Also draw the skyline as a panorama.")
    private @Nullable Path picture;

    @Option(names = "--dark", description = "Draw in dim red on black.")
    private boolean dark;

    HorizonCommand(Workbench workbench) {
        super(workbench, "skyline set");
    }

    @Override
    public Integer call() {
        if (corners != null || csv != null || open) {
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
    List<NightEvent> events(ActionContext context) {
        if ((corners != null ? 1 : 0) + (csv != null ? 1 : 0) + (open ? 1 : 0) > 1) {
            throw new InputRefused("the skyline is given twice", "give corners, --csv or --open, only one of them");
        }
        if (csv != null) {
            return List.of(new NightEvent.HorizonSet(SkylineFile.read(csv)));
        }
        return List.of(new NightEvent.HorizonSet(
                corners == null
                        ? Horizon.OPEN
                        : new Horizon(corners.stream().map(SkylineInput::corner).toList())));
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
