package polewright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Mixin;
import polewright.operations.Workbench;
import polewright.operations.action.Action;
import polewright.operations.action.Effect;
import polewright.operations.practice.PracticeNight;
import polewright.report.json.PracticeJson;
import polewright.report.text.PracticeWords;
import polewright.simulation.practice.CompletedAction;
import polewright.simulation.practice.ObservedReadings;
import polewright.simulation.practice.PracticeAction;

/** An action on the simulated mount, as a command. */
class PracticeActionCommand implements Callable<Integer> {
    private final Workbench workbench;
    private final ActionArguments arguments;
    private final Effect.Practising effect;

    @Mixin
    private KeyOption key;

    @Mixin
    private Output output;

    PracticeActionCommand(Workbench workbench, Action action) {
        this.workbench = workbench;
        this.arguments = new ActionArguments(action);
        this.effect = (Effect.Practising) action.effect();
    }

    /** The command, whose name is the last word of the action's. */
    static CommandLine of(Action action, Workbench workbench) {
        return line(new PracticeActionCommand(workbench, action));
    }

    /** The same for a command with options in addition to those of its action. */
    static CommandLine line(PracticeActionCommand command) {
        return command.arguments.addedTo(command);
    }

    /** Follow-up once it is done and reported. */
    void afterwards(CompletedAction done, Workbench bench, Output out) {}

    @Override
    public final Integer call() {
        PracticeNight night = PracticeNight.ofNow(workbench);
        PracticeAction action = arguments.usable(() -> effect.action(arguments.entries(), night.state()));
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
