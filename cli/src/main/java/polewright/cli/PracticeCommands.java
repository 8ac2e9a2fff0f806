package polewright.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
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
import polewright.alignment.advice.ScrewTurn;
import polewright.drawing.Palette;
import polewright.drawing.chart.RockedFieldDrawing;
import polewright.mount.rig.HandTurns;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;
import polewright.operations.OperationFailed;
import polewright.operations.Workbench;
import polewright.operations.input.SiteInput;
import polewright.operations.input.TurnsInput;
import polewright.operations.input.UtcInput;
import polewright.operations.practice.PracticeNight;
import polewright.report.json.PracticeJson;
import polewright.report.text.PracticeWords;
import polewright.simulation.practice.CompletedAction;
import polewright.simulation.practice.Debrief;
import polewright.simulation.practice.ObservedReadings;
import polewright.simulation.practice.PracticeAction;
import polewright.simulation.practice.Scenario;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** A practice night by day: a hidden offset, screws to turn, observations to make. */
@Command(
        name = "practice",
        description = "Practise a whole night by day, on a simulated wedge with a hidden offset.",
        footer = {
            "",
            "For example:",
            "  polewright practice begin",
            "  polewright practice do -- next",
            "  polewright practice look compass",
            "  polewright practice screw azimuth \"1 1/4 ccw\""
        },
        subcommands = {
            PracticeCommands.Begin.class,
            PracticeCommands.Screw.class,
            PracticeCommands.Clamp.class,
            PracticeCommands.Unclamp.class,
            PracticeCommands.Move.class,
            PracticeLooks.class,
            PracticeCommands.TakeFrame.class,
            PracticeCommands.Wait.class,
            PracticeCommands.Do.class,
            PracticeCommands.TellTruth.class
        })
final class PracticeCommands implements Callable<Integer> {
    private final Workbench workbench;

    @Mixin
    private Output output;

    PracticeCommands(Workbench workbench) {
        this.workbench = workbench;
    }

    /** The current state. */
    @Override
    public Integer call() {
        PracticeNight night = current(workbench);
        if (output.isJson()) {
            output.print(workbench, PracticeJson.of(night.state()));
        } else {
            output.say(workbench, PracticeWords.standing(night.state()));
        }
        return 0;
    }

    static PracticeNight current(Workbench workbench) {
        return PracticeNight.current(workbench)
                .orElseThrow(
                        () -> new OperationFailed("no practice has begun. Begin one with polewright practice begin."));
    }

    @Command(name = "begin", description = "Begin a practice night; an earlier one is kept.")
    static final class Begin implements Callable<Integer> {
        private static final long DEFAULT_SEED = 6;

        private final Workbench workbench;

        @Option(
                names = "--seed",
                paramLabel = "NUMBER",
                description = "Random seed; another seed hides another offset. Default: 6.")
        private long seed = DEFAULT_SEED;

        @Option(
                names = "--site",
                paramLabel = "LAT,LON[,HEIGHT]",
                converter = SiteInput.class,
                description = "Your own site, with --at. Default: Larkfell, an invented site at 55 N.")
        private @Nullable Site site;

        @Option(
                names = "--at",
                paramLabel = "TIME",
                converter = UtcInput.class,
                description = "When it begins, with time zone; it must be dark then.")
        private @Nullable Instant at;

        @Option(names = "--south", description = "At Tussock Flat, an invented site at 44 S.")
        private boolean south;

        @Option(names = "--camera", description = "With a small camera on the tube.")
        private boolean camera;

        @Mixin
        private KeyOption key;

        @Mixin
        private RigOption rig;

        @Mixin
        private Output output;

        Begin(Workbench workbench) {
            this.workbench = workbench;
        }

        @Override
        public Integer call() {
            PracticeNight night = PracticeNight.begin(workbench, scenario(), key.given());
            if (output.isJson()) {
                output.print(workbench, PracticeJson.of(night.state()));
            } else {
                output.say(workbench, PracticeWords.begun(night.state().scenario()));
            }
            return 0;
        }

        private Scenario scenario() {
            if (site != null && (south || at == null)) {
                throw new WrongUsage(
                        "your own site needs a time when it is dark, and excludes --south. Add --at TIME.");
            }
            DemoScene scene = south ? DemoScene.TUSSOCK_FLAT : DemoScene.LARKFELL;
            String name = site == null ? scene.name() : "your site";
            Site where = site == null ? scene.site() : site;
            Instant from = at == null ? scene.evening() : at;
            Rig told = rig.rig(Optional.empty());
            return WrongUsage.unlessUsable(() -> camera
                    ? Scenario.withCamera(name, where, told, from, seed)
                    : Scenario.byEye(name, where, told, from, seed));
        }
    }

    /** Common base of all actions. */
    abstract static class PracticeActionCommand implements Callable<Integer> {
        private final Workbench workbench;

        @Mixin
        private KeyOption key;

        @Mixin
        private Output output;

        PracticeActionCommand(Workbench workbench) {
            this.workbench = workbench;
        }

        abstract PracticeAction action(PracticeNight night);

        /** Follow-up once it is done and reported. */
        void afterwards(CompletedAction done, Workbench bench, Output out) {}

        @Override
        public final Integer call() {
            PracticeNight night = current(workbench);
            PracticeAction action = WrongUsage.unlessUsable(() -> action(night));
            CompletedAction done = night.perform(action, key.given());
            if (output.isJson()) {
                output.print(workbench, PracticeJson.of(done, night.state(), night::frame));
            } else {
                List<String> lines = new ArrayList<>(PracticeWords.done(done));
                if (done.seen() instanceof ObservedReadings.FrameTaken taken) {
                    lines.add("In " + night.frame(taken.number()));
                }
                output.say(workbench, lines);
            }
            afterwards(done, workbench, output);
            return 0;
        }
    }

    @Command(name = "screw", description = "Turn a screw of the practice wedge, clockwise positive.")
    static final class Screw extends PracticeActionCommand {
        @Parameters(index = "0", paramLabel = "azimuth|altitude", description = "Which screw.")
        private ScrewTurn.Which screw;

        @Parameters(
                index = "1",
                paramLabel = "TURNS",
                converter = TurnsInput.class,
                description = "1.25, \"3/8 ccw\"; past the goal and back: \"2 ccw then 1/2 cw\".")
        private HandTurns turns;

        Screw(Workbench workbench) {
            super(workbench);
        }

        @Override
        PracticeAction action(PracticeNight night) {
            return new PracticeAction.TurnScrew(screw, turns);
        }
    }

    @Command(name = "clamp", description = "Tighten the clamps.")
    static final class Clamp extends PracticeActionCommand {
        Clamp(Workbench workbench) {
            super(workbench);
        }

        @Override
        PracticeAction action(PracticeNight night) {
            return new PracticeAction.Clamp();
        }
    }

    @Command(name = "unclamp", description = "Loosen the clamps.")
    static final class Unclamp extends PracticeActionCommand {
        Unclamp(Workbench workbench) {
            super(workbench);
        }

        @Override
        PracticeAction action(PracticeNight night) {
            return new PracticeAction.Unclamp();
        }
    }

    @Command(name = "move", description = "Move the whole mount by hand, roughly, facing the pole.")
    static final class Move extends PracticeActionCommand {
        @Option(names = "--right", paramLabel = "DEG", description = "How far to the right; negative for left.")
        private double rightDeg;

        @Option(names = "--up", paramLabel = "DEG", description = "How far up; negative for down.")
        private double upDeg;

        Move(Workbench workbench) {
            super(workbench);
        }

        @Override
        PracticeAction action(PracticeNight night) {
            return new PracticeAction.MoveByHand(Angle.ofDegrees(rightDeg), Angle.ofDegrees(upDeg));
        }
    }

    @Command(name = "frame", description = "Take a frame with right ascension turned this far from home.")
    static final class TakeFrame extends PracticeActionCommand {
        @Option(
                names = "--turned",
                required = true,
                paramLabel = "DEG",
                description = "Westward from home: -30, 0 and 30 make a good set.")
        private double turnedDeg;

        TakeFrame(Workbench workbench) {
            super(workbench);
        }

        @Override
        PracticeAction action(PracticeNight night) {
            return new PracticeAction.TakeFrame(Angle.ofDegrees(turnedDeg));
        }
    }

    @Command(name = "wait", description = "Let time pass.")
    static final class Wait extends PracticeActionCommand {
        @Parameters(paramLabel = "MINUTES", description = "How long.")
        private double minutes;

        Wait(Workbench workbench) {
            super(workbench);
        }

        @Override
        PracticeAction action(PracticeNight night) {
            return new PracticeAction.Wait(Duration.ofSeconds(Math.round(minutes * 60)));
        }
    }

    @Command(
            name = "do",
            description = "Run any other command on the practice log and clock.",
            footer = {"", "For example:", "  polewright practice do -- sight compass 12"})
    static final class Do implements Callable<Integer> {
        private final Workbench workbench;

        @Parameters(paramLabel = "COMMAND", arity = "1..*", description = "The command, after two hyphens.")
        private List<String> typed;

        Do(Workbench workbench) {
            this.workbench = workbench;
        }

        @Override
        public Integer call() {
            if (typed.get(0).equals("practice")) {
                throw new WrongUsage("a practice cannot run inside a practice. Leave out practice do --.");
            }
            return Polewright.run(current(workbench).bench(workbench), List.of(), typed.toArray(String[]::new));
        }
    }

    @Command(name = "debrief", description = "Debrief: where the axis really points, and where the time went.")
    static final class TellTruth implements Callable<Integer> {
        private final Workbench workbench;

        @Mixin
        private Output output;

        TellTruth(Workbench workbench) {
            this.workbench = workbench;
        }

        @Override
        public Integer call() {
            Debrief debrief = current(workbench).debrief();
            if (output.isJson()) {
                output.print(workbench, PracticeJson.of(debrief));
            } else {
                output.say(workbench, PracticeWords.debrief(debrief));
            }
            return 0;
        }
    }

    /** The view through an optic, as a picture. */
    static final class RockedPicture {
        @Option(names = "--picture", paramLabel = "FILE.svg", description = "Also draw what is seen.")
        private @Nullable Path file;

        @Option(names = "--dark", description = "Draw in dim red on black.")
        private boolean dark;

        void draw(CompletedAction done, Workbench bench, Output out) {
            if (file != null && done.seen() instanceof ObservedReadings.WhileRocking rocking) {
                Optic optic = rocking.optic();
                String svg = RockedFieldDrawing.svg(rocking.field(), optic.name(), dark ? Palette.DARK : Palette.LIGHT);
                ResultFile.write(file, svg.getBytes(StandardCharsets.UTF_8));
                out.mention(bench, "Drawn: " + file);
            }
        }
    }
}
