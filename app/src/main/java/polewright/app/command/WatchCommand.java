package polewright.app.command;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import polewright.app.JobFailed;
import polewright.app.Workbench;
import polewright.app.camera.ExposureTime;
import polewright.app.camera.FrameClues;
import polewright.app.camera.FrameFile;
import polewright.app.camera.FrameReading;
import polewright.app.camera.FrameSeries;
import polewright.app.camera.PlacedFrame;
import polewright.app.watch.Arrival;
import polewright.app.watch.FrameFolder;
import polewright.app.watch.TurningWatch;
import polewright.app.watch.WatchStep;
import polewright.axis.sighting.TurnedFrames;
import polewright.night.NightState;
import polewright.night.event.LoggedEvent;
import polewright.night.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.attitude.CameraAttitude;

@Command(
        name = "watch",
        description = "Take each new frame that a capture program saves in a folder: first while right ascension is"
                + " turned, until they tell the axis, which is logged; then while the screws are turned.",
        footer = {
            "",
            "Point anywhere, start it, take a frame, turn right ascension by 30 to 90 degrees",
            "and nothing else, take another, and a third if you like. Once the axis is known,",
            "turn the screws: each new frame says how far they went and how much is left.",
            "Ctrl-C ends it; what was found stays in the log.",
            "For example:",
            "  polewright watch ~/captures --near pole"
        })
final class WatchCommand implements Callable<Integer> {
    private static final Duration BETWEEN_LOOKS = Duration.ofMillis(200);

    private final Workbench workbench;

    @Parameters(paramLabel = "FOLDER", description = "Where the capture program saves; folders in it are left alone.")
    private Path folder;

    @Option(
            names = "--turning",
            description =
                    "The axis is known by the last frames in the log, the camera not touched since: go on with the"
                            + " screws.")
    private boolean turning;

    @Option(names = "--all", description = "Take the frames too that are in the folder already.")
    private boolean all;

    @Option(names = "--count", paramLabel = "N", description = "End after so many frames.")
    private @Nullable Long count;

    @Option(names = "--until-idle", paramLabel = "SECONDS", description = "End when no frame has come for so long.")
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
        NightEvent.Begun begun = night.begun();
        FrameClues told = clues.clues(Optional.of(begun.site()));
        TurningWatch watch = new TurningWatch(
                begun.site(), begun.rig(), night.fix().state().gains(), night.allowance(), drive.told());
        Optional<LastFrames> last = turning ? Optional.of(lastFrames(night)) : Optional.empty();
        last.ifPresent(logged -> watch.goOnFrom(logged.frames()));
        FrameFolder frames = FrameFolder.of(folder, workbench.clock(), all);
        WatchReport report = new WatchReport(workbench, output, begun.site(), drive.told());
        WatchLog entries = new WatchLog(workbench, log, last.map(LastFrames::seq));
        report.began(folder, frames.passedOver(), turning);
        try (UntilStopped running = UntilStopped.byInterrupt()) {
            new Loop(begun, told, watch, frames, report, entries).run(running);
            finish(watch, report, entries);
        }
        return 0;
    }

    private void requireLimits() {
        if (count != null && count < 1) {
            throw new WrongUsage("--count " + count + " is below 1: say how many frames to take.");
        }
        if (idleSeconds != null && !(idleSeconds > 0 && idleSeconds <= 86_400)) {
            throw new WrongUsage("--until-idle is outside 0 to 86400 seconds: say how long to wait for another frame.");
        }
    }

    /** Frames that tell the axis, and their number in the log. */
    private record LastFrames(long seq, TurnedFrames frames) {}

    private static LastFrames lastFrames(NightState night) {
        List<LastFrames> logged = new ArrayList<>();
        for (LoggedEvent event : night.standing()) {
            if (event.event() instanceof NightEvent.SightingTaken taken
                    && taken.sighting() instanceof TurnedFrames frames) {
                logged.add(new LastFrames(event.seq(), frames));
            }
        }
        if (logged.isEmpty()) {
            throw new JobFailed(
                    "no frames tell the axis tonight yet: watch without --turning first, or use polewright sight frames.");
        }
        return logged.get(logged.size() - 1);
    }

    private void finish(TurningWatch watch, WatchReport report, WatchLog entries) {
        if (watch.screwsMoved()) {
            log(report, () -> entries.logAfterScrews(watch.sighting().orElseThrow()));
        }
        report.ended();
    }

    /** What cannot be logged is said, and the watch goes on: what comes next may be. */
    private static void log(WatchReport report, Supplier<WatchLog.Entry> entry) {
        try {
            report.logged(entry.get());
        } catch (InputRefused | JobFailed refused) {
            report.note("Not logged: " + refused.getMessage());
        }
    }

    /** The frames as they come. */
    private final class Loop {
        private final NightEvent.Begun begun;
        private final FrameClues told;
        private final TurningWatch watch;
        private final FrameFolder frames;
        private final WatchReport report;
        private final WatchLog entries;
        private final FrameReading reading = new FrameReading(workbench.clock());
        private final Clock clock = workbench.clock();
        private Optional<PlacedFrame> reference = Optional.empty();
        private Instant lastArrival = clock.instant();
        private long taken;

        private Loop(
                NightEvent.Begun begun,
                FrameClues told,
                TurningWatch watch,
                FrameFolder frames,
                WatchReport report,
                WatchLog entries) {
            this.begun = begun;
            this.told = told;
            this.watch = watch;
            this.frames = frames;
            this.report = report;
            this.entries = entries;
        }

        private void run(UntilStopped running) {
            while (!running.isStopped() && !isDone()) {
                List<Standing> placed = new ArrayList<>();
                for (Arrival arrival : frames.look()) {
                    if (running.isStopped()) {
                        break;
                    }
                    if (arrival instanceof Arrival.PassedOver passed) {
                        report.note(passed.line());
                    } else if (arrival instanceof Arrival.Whole whole) {
                        place(whole.file()).ifPresent(placed::add);
                        lastArrival = clock.instant();
                        taken++;
                    }
                }
                placed.sort(Comparator.comparing(s -> s.attitude().at()));
                placed.forEach(this::add);
                if (!running.isStopped() && !isDone()) {
                    running.pause(workbench.pause(), BETWEEN_LOOKS);
                }
            }
        }

        private boolean isDone() {
            boolean idle = idleSeconds != null
                    && Duration.between(lastArrival, clock.instant()).toMillis() >= idleSeconds * 1000;
            return idle || (count != null && taken >= count);
        }

        private Optional<Standing> place(FrameFile file) {
            try {
                PlacedFrame placed = reading.place(file, told, ExposureTime.needed(Optional.empty()), reference);
                if (reference.isEmpty()) {
                    reference = Optional.of(placed);
                }
                return Optional.of(new Standing(placed, FrameSeries.attitude(placed, begun.site(), begun.weather())));
            } catch (InputRefused | JobFailed refused) {
                report.refused(file.name(), String.valueOf(refused.getMessage()));
                return Optional.empty();
            }
        }

        private void add(Standing standing) {
            WatchStep step;
            try {
                step = watch.add(standing.attitude());
            } catch (InputRefused refused) {
                report.refused(standing.frame().name(), standing.frame().name() + ": " + refused.getMessage());
                return;
            }
            report.step(standing.frame(), step);
            if (step instanceof WatchStep.AxisFound || step instanceof WatchStep.AxisSharpened) {
                log(report, () -> entries.logAxis(watch.sighting().orElseThrow()));
            } else if (step instanceof WatchStep.StartedAfresh afresh) {
                afresh.leftOff().ifPresent(frames -> log(report, () -> entries.logAfterScrews(frames)));
                entries.startAfresh();
            }
        }
    }

    private record Standing(PlacedFrame frame, CameraAttitude attitude) {}
}
