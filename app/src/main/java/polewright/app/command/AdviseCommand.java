package polewright.app.command;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import polewright.app.Workbench;
import polewright.app.json.NightJson;
import polewright.app.text.AdviceWords;
import polewright.app.text.FixWords;
import polewright.app.text.ScrewWords;
import polewright.night.NightState;

@Command(name = "advise", description = "What to do next, and why.")
final class AdviseCommand implements Callable<Integer> {
    private final Workbench workbench;

    @Mixin
    private LogOption log;

    @Mixin
    private Output output;

    AdviseCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        NightState night = FixCommand.tonight(log, workbench);
        if (output.isJson()) {
            output.print(workbench, NightJson.advice(night.advice()));
        } else {
            output.say(workbench, AdviceWords.of(night));
            output.say(workbench, FixWords.beforeAdvice(night));
            output.say(workbench, ScrewWords.findings(night.fix().state()));
            output.say(workbench, FixWords.contradictions(night));
        }
        return 0;
    }
}
