package polewright.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import polewright.alignment.camera.FrameChecks;
import polewright.image.MissingFacts;
import polewright.operations.Workbench;
import polewright.operations.camera.ExposureTime;
import polewright.operations.camera.FrameClues;
import polewright.operations.camera.FrameFile;
import polewright.operations.camera.FrameReading;
import polewright.operations.camera.FrameSeries;
import polewright.operations.camera.HeaderClock;
import polewright.operations.camera.PlacedFrame;
import polewright.operations.input.UtcInput;
import polewright.report.text.AxisWords;
import polewright.sky.InputRefused;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** The files of frames that belong together, and their times. */
final class SeveralFrames {
    private static final MissingFacts.TimeRemedy WITHOUT_TIME = new MissingFacts.TimeRemedy(
            "give the middle of the exposure with --at, such as --at 2026-11-25T20:00Z",
            "give the zone with --zone, such as --zone +01:00 or --zone Z for UTC");

    @Parameters(
            paramLabel = "FRAME",
            arity = "1..*",
            description = "FITS, TIFF, PNG, JPEG, or raw files with an embedded preview; in any order.")
    private List<Path> files = new ArrayList<>();

    @Mixin
    private FrameOptions clues;

    @Option(
            names = "--at",
            paramLabel = "TIME",
            split = ",",
            converter = UtcInput.class,
            description =
                    "Middle of each exposure, with time zone, in the order of the files: TIME,TIME. Default: from the"
                            + " files.")
    private @Nullable List<Instant> times;

    /** Solves each frame, the later ones with the help of the first; each must have its time. */
    FrameSeries place(Workbench workbench, Output output, Site site, Weather weather) {
        if (times != null && times.size() != files.size()) {
            throw new WrongUsage(files.size() + (files.size() == 1 ? " frame" : " frames") + " but " + times.size()
                    + (times.size() == 1 ? " time" : " times")
                    + ". Give --at one time per file, in the same order, separated by commas.");
        }
        refuseSameTwice();
        FrameClues told = clues.clues(Optional.of(site));
        try (Progress progress = Progress.of(workbench, output, FrameReading.STEPS_A_FRAME * files.size())) {
            FrameSeries series =
                    FrameSeries.of(place(new FrameReading(workbench.clock(), progress), told), site, weather);
            refuseLocalTimes(series);
            return series;
        }
    }

    private boolean isTimeGiven() {
        return times != null
                || clues.clues(Optional.empty()).decoding().cameraZone().isPresent();
    }

    /** Local time mistaken for UTC moves the axis by up to a degree: the user must confirm the time first. */
    private void refuseLocalTimes(FrameSeries series) {
        if (isTimeGiven()) {
            return;
        }
        List<HeaderClock.Saved> saved = series.frames().stream()
                .flatMap(frame -> HeaderClock.Saved.of(frame).stream())
                .toList();
        HeaderClock.of(saved).ifPresent(off -> {
            throw new InputRefused(
                    "the times in these frames are " + off.words() + ", so they are probably local time and not UTC",
                    "if so, add --zone " + off.zone() + "; if they are UTC, add --zone Z");
        });
    }

    /** Refuses stars at a time when the Sun was up, unless the user has stated the times. */
    void refuseDaylight(FrameSeries series, Site site) {
        for (int i = 0; !isTimeGiven() && i < series.frames().size(); i++) {
            CameraAttitude attitude = series.attitudes().get(i);
            String name = series.frames().get(i).name();
            FrameChecks.sunTooHigh(site, attitude).ifPresent(sun -> {
                throw new InputRefused(
                                "it shows stars, but at its time (" + AxisWords.clock(attitude.at())
                                        + ") the Sun was at " + Math.round(sun.degrees()) + "°",
                                "check the site; if the file gives local time, add --zone with the camera's zone,"
                                        + " such as"
                                        + " --zone +02:00; if it is right, add --zone Z")
                        .at(name);
            });
        }
    }

    private void refuseSameTwice() {
        Set<Path> seen = new HashSet<>();
        for (Path file : files) {
            if (!seen.add(file.toAbsolutePath().normalize())) {
                throw new InputRefused(file + " is named twice", "name each frame once");
            }
        }
    }

    private List<PlacedFrame> place(FrameReading reading, FrameClues told) {
        List<PlacedFrame> placed = new ArrayList<>();
        for (int i = 0; i < files.size(); i++) {
            ExposureTime time =
                    ExposureTime.needed(times == null ? Optional.empty() : Optional.of(times.get(i)), WITHOUT_TIME);
            Optional<PlacedFrame> first = placed.isEmpty() ? Optional.empty() : Optional.of(placed.get(0));
            placed.add(reading.place(FrameFile.read(files.get(i)), told, time, first));
        }
        return placed;
    }
}
