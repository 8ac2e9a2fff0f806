package polewright.cli;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import polewright.operations.Workbench;
import polewright.operations.watch.FrameFolder;
import polewright.operations.watch.FrameWatch;
import polewright.session.NightState;
import polewright.sky.place.Site;

@Command(
        name = "watch",
        description = "Follow the frames that a capture program saves in a folder: first while right ascension is"
                + " turned, until they give the axis, which is logged; then while the screws are turned.",
        footer = {
            "",
            "Point anywhere, start the watch, take a frame, turn right ascension by 30 to 90 degrees",
            "and nothing else, take another, and perhaps a third. Once the axis is known,",
            "turn the screws: each new frame shows how far they went and how much remains.",
            "Stop with Ctrl-C; what was found stays in the log.",
            "For example:",
            "  polewright watch ~/captures --near pole"
        })
final class WatchCommand implements Callable<Integer> {
    private final Workbench workbench;

    @Parameters(paramLabel = "FOLDER", description = "Where the capture program saves; subfolders are ignored.")
    private Path folder;

    @Option(
            names = "--turning",
            description =
                    "The axis is known from the last frames in the log and the camera has not been touched. Continue"
                            + " with the"
                            + " screws.")
    private boolean turning;

    @Option(names = "--all", description = "Also use the frames already in the folder.")
    private boolean all;

    @Option(names = "--count", paramLabel = "N", description = "Stop after this many frames.")
    private @Nullable Long count;

    @Option(names = "--until-idle", paramLabel = "SECONDS", description = "Stop when no frame has come for this long.")
    private @Nullable Double idleSeconds;

    @Mixin
    private FrameOptions clues;

    @Mixin
    private DriveOption drive;

    @Mixin
    private LogOption log;

    @Mixin
    private Output output;

    WatchCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        requireLimits();
        NightState night = FixCommand.tonight(log, workbench);
        Site site = night.begun().site();
        WatchReport report = new WatchReport(workbench, output, night, drive.told());
        FrameWatch watch = FrameWatch.of(
                FrameFolder.of(folder, workbench.clock(), all),
                new FrameWatch.Task(turning, clues.clues(Optional.of(site)), drive.told()),
                night,
                () -> log.openExisting(workbench),
                workbench,
                report);
        report.began(folder, watch.passedOver(), turning);
        try (UntilStopped running = UntilStopped.byInterrupt()) {
            watch.run(until(), running::isStopped);
        }
        return 0;
    }

    private FrameWatch.Until until() {
        return new FrameWatch.Until(
                count == null ? OptionalLong.empty() : OptionalLong.of(count),
                Optional.ofNullable(idleSeconds).map(seconds -> Duration.ofNanos(Math.round(seconds * 1e9))));
    }

    private void requireLimits() {
        if (count != null && count < 1) {
            throw new WrongUsage("--count " + count + " is below 1. Give the number of frames.");
        }
        if (idleSeconds != null && !(idleSeconds > 0 && idleSeconds <= 86_400)) {
            throw new WrongUsage(
                    "--until-idle is outside 0 to 86400 seconds. Give how long to wait for another frame.");
        }
    }
}
