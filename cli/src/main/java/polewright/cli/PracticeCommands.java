package polewright.cli;

import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import polewright.operations.Workbench;
import polewright.operations.practice.PracticeActions;
import polewright.operations.practice.PracticeNight;
import polewright.report.json.PracticeJson;
import polewright.report.text.PracticeWords;
import polewright.simulation.practice.Debrief;

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
        })
final class PracticeCommands implements Callable<Integer> {
    private final Workbench workbench;

    @Mixin
    private Output output;

    private PracticeCommands(Workbench workbench) {
        this.workbench = workbench;
    }

    /** The command with its subcommands. */
    static CommandLine of(Workbench workbench, CommandLine.IFactory factory) {
        CommandLine looks = new CommandLine(new Looks(), factory);
        looks.addSubcommand(PracticeActionCommand.of(PracticeActions.COMPASS, workbench));
        looks.addSubcommand(PracticeActionCommand.of(PracticeActions.SCALE, workbench));
        looks.addSubcommand(RockingCommand.of(workbench));
        looks.addSubcommand(PracticeActionCommand.of(PracticeActions.DRIFT, workbench));
        CommandLine practice = new CommandLine(new PracticeCommands(workbench), factory);
        practice.addSubcommand(PracticeBeginCommand.of(workbench));
        practice.addSubcommand(PracticeActionCommand.of(PracticeActions.SCREW_TURNED, workbench));
        practice.addSubcommand(PracticeActionCommand.of(PracticeActions.CLAMP, workbench));
        practice.addSubcommand(PracticeActionCommand.of(PracticeActions.UNCLAMP, workbench));
        practice.addSubcommand(PracticeActionCommand.of(PracticeActions.MOVE, workbench));
        practice.addSubcommand(looks);
        practice.addSubcommand(PracticeActionCommand.of(PracticeActions.FRAME, workbench));
        practice.addSubcommand(PracticeActionCommand.of(PracticeActions.WAIT, workbench));
        practice.addSubcommand(new CommandLine(Do.class, factory));
        practice.addSubcommand(new CommandLine(TellTruth.class, factory));
        return practice;
    }

    /** The current state. */
    @Override
    public Integer call() {
        PracticeNight night = PracticeNight.ofNow(workbench);
        if (output.isJson()) {
            output.print(workbench, PracticeJson.of(night.state()));
        } else {
            output.say(workbench, PracticeWords.standing(night.state()));
        }
        return 0;
    }

    /** Observations in a practice night. */
    @Command(name = "look", description = "Read an instrument or look through an optic of the practice rig.")
    static final class Looks {}

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
            return Polewright.run(
                    PracticeNight.ofNow(workbench).bench(workbench), List.of(), typed.toArray(String[]::new));
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
            Debrief debrief = PracticeNight.ofNow(workbench).debrief();
            if (output.isJson()) {
                output.print(workbench, PracticeJson.of(debrief));
            } else {
                output.say(workbench, PracticeWords.debrief(debrief));
            }
            return 0;
        }
    }
}
