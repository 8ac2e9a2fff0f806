package polewright.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import polewright.image.wcs.WcsHeader;
import polewright.operations.Workbench;
import polewright.operations.camera.ExposureTime;
import polewright.operations.camera.FrameClues;
import polewright.operations.camera.FrameFile;
import polewright.operations.camera.FrameReading;
import polewright.operations.camera.FrameSeries;
import polewright.operations.camera.PlacedFrame;
import polewright.operations.input.UtcInput;
import polewright.operations.picture.PointMark;
import polewright.operations.picture.PointMarks;
import polewright.report.json.AttitudeJson;
import polewright.report.text.AttitudeWords;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;
import polewright.sky.place.Site;
import polewright.sky.time.SkyTime;

@Command(
        name = "attitude",
        description = "Find where the camera pointed, from the stars on one frame.",
        footer = {
            "",
            "For example:",
            "  polewright attitude frame.fits --near pole",
            "  polewright attitude photo.jpg --scale 28 --json"
        })
final class AttitudeCommand implements Callable<Integer> {
    private final Workbench workbench;

    @Parameters(paramLabel = "FRAME", description = "FITS, TIFF, PNG, JPEG, or a raw file with an embedded preview.")
    private Path file;

    @Mixin
    private FrameOptions clues;

    @Mixin
    private SiteOptions where;

    @Option(
            names = "--at",
            paramLabel = "TIME",
            converter = UtcInput.class,
            description = "Middle of the exposure, with time zone. Default: from the file.")
    private @Nullable Instant at;

    @Option(
            names = "--wcs",
            paramLabel = "FILE",
            description = "Write the solution as a FITS header (TAN, or TAN-SIP with distortion). Pixel"
                    + " (1,1) is the first one stored.")
    private @Nullable Path wcs;

    @Mixin
    private PictureOption picture;

    @Mixin
    private LogOption log;

    @Mixin
    private Output output;

    AttitudeCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        Optional<NightEvent.Begun> last = log.lastBegun(workbench);
        Optional<Site> site = where.given().isPresent() || last.isPresent()
                ? Optional.of(where.site(workbench, last))
                : Optional.empty();
        PlacedFrame placed = place(clues.clues(site));
        List<String> notes = new ArrayList<>();
        placed.remarks().forEach(remark -> notes.add("NOTE  " + remark));
        Optional<RefractedDirection> stood = site.flatMap(s -> placed.at().map(time -> direction(placed, s, time)));
        if (output.isJson()) {
            output.print(workbench, AttitudeJson.of(placed, stood, notes));
        } else {
            output.say(workbench, AttitudeWords.of(placed, stood));
            output.say(workbench, notes);
        }
        if (wcs != null) {
            ResultFile.write(wcs, WcsHeader.of(placed.match().plate()));
            output.mention(workbench, "Written: " + wcs);
        }
        if (picture.isAsked()) {
            picture.draw(workbench, output, placed, pole(placed, site), Optional.empty(), List.of());
        }
        return 0;
    }

    private PlacedFrame place(FrameClues told) {
        try (Progress progress = Progress.of(workbench, output, FrameReading.STEPS_A_FRAME)) {
            return new FrameReading(workbench.clock(), progress)
                    .place(FrameFile.read(file), told, ExposureTime.ifKnown(Optional.ofNullable(at)), Optional.empty());
        }
    }

    private PointMark pole(PlacedFrame placed, Optional<Site> site) {
        if (site.isPresent() && placed.at().isPresent()) {
            try {
                CameraAttitude attitude = FrameSeries.attitude(placed, site.get(), where.weather(site.get()));
                return PointMarks.truePole(placed, attitude, site.get());
            } catch (InputRefused underTheHorizon) {
                // Taken elsewhere, or at another time: the pole in ICRS is good enough for a picture.
                return PointMarks.pole(placed, placed.at().get());
            }
        }
        return PointMarks.pole(placed, placed.at().orElseGet(workbench::now));
    }

    /** Apparent direction of its centre in azimuth and altitude. */
    private RefractedDirection direction(PlacedFrame placed, Site site, Instant time) {
        ObservingMoment moment = ObservingMoment.of(site, SkyTime.of(time), where.weather(site));
        var plate = placed.match().plate();
        return moment.refracted(moment.apparent(CatalogueStar.fixed(plate.rightAscension(), plate.declination())));
    }
}
