package polewright.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Mixin;
import polewright.operations.Workbench;
import polewright.operations.action.Effect;
import polewright.operations.practice.PracticeActions;
import polewright.operations.practice.PracticeNight;
import polewright.report.json.PracticeJson;
import polewright.report.text.PracticeWords;
import polewright.simulation.practice.Scenario;

/** Begins a practice. */
final class PracticeBeginCommand implements Callable<Integer> {
    private final Workbench workbench;
    private final ActionArguments arguments = new ActionArguments(PracticeActions.BEGIN);

    @Mixin
    private KeyOption key;

    @Mixin
    private Output output;

    private PracticeBeginCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    static CommandLine of(Workbench workbench) {
        PracticeBeginCommand command = new PracticeBeginCommand(workbench);
        return command.arguments.addedTo(command);
    }

    @Override
    public Integer call() {
        Effect.BeginningPractice effect =
                (Effect.BeginningPractice) arguments.action().effect();
        Scenario scenario = arguments.usable(() -> effect.scenario(arguments.entries()));
        PracticeNight night = PracticeNight.begin(workbench, scenario, key.given());
        if (output.isJson()) {
            output.print(workbench, PracticeJson.of(night.state()));
        } else {
            output.say(workbench, PracticeWords.begun(night.state().scenario()));
        }
        return 0;
    }
}
