package polewright.cli;

import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import polewright.alignment.camera.AxisFromFrames;
import polewright.operations.Workbench;
import polewright.operations.camera.FrameSeries;
import polewright.report.json.FramesJson;
import polewright.report.text.AxisWords;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

@Command(
        name = "axis",
        description = "Find the polar axis from two or more frames between which right ascension was turned and"
                + " nothing else.",
        footer = {
            "",
            "Turn by 30 to 90 degrees. A third frame checks the first two. Any part of the sky will do.",
            "For example:",
            "  polewright axis first.fits second.fits third.fits --site 54.60,-2.90,240",
            "To log it as a sighting: polewright sight frames."
        })
final class AxisCommand implements Callable<Integer> {
    private final Workbench workbench;

    @Mixin
    private SeveralFrames frames;

    @Mixin
    private SiteOptions where;

    @Mixin
    private LogOption log;

    @Mixin
    private DriveOption drive;

    @Mixin
    private PictureOption picture;

    @Mixin
    private Output output;

    AxisCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        Site site = where.site(workbench, where.given().isPresent() ? Optional.empty() : log.lastBegun(workbench));
        Weather weather = where.weather(site);
        FrameSeries series = frames.place(workbench, output, site, weather);
        AxisFromFrames found = AxisFromFrames.of(site, series.attitudes());
        if (output.isJson()) {
            output.print(workbench, FramesJson.of(found, drive.told()));
        } else {
            output.say(workbench, AxisWords.frames(series.frames()));
            output.say(workbench, AxisWords.of(found, drive.told()));
            output.say(workbench, AxisWords.notes(found, drive.told()));
        }
        AxisPicture.draw(picture, workbench, output, series, found);
        return 0;
    }
}
