package polewright.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import polewright.operations.Workbench;
import polewright.report.json.NightJson;
import polewright.report.text.Line;
import polewright.report.text.NextWords;
import polewright.report.text.Wrapping;
import polewright.session.NightState;

@Command(name = "next", description = "Show the one thing to do now. For the reasons: polewright advise.")
final class NextCommand implements Callable<Integer> {
    private final Workbench workbench;

    @Mixin
    private LogOption log;

    @Mixin
    private Output output;

    NextCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        NightState night = FixCommand.tonight(log, workbench);
        if (output.isJson()) {
            ObjectNode node = NightJson.advice(night);
            Wrapping.wrapped(Line.inTerminal(NextWords.of(night))).forEach(node.putArray("words")::add);
            output.print(workbench, node);
        } else {
            output.report(workbench, NextWords.of(night));
            output.say(workbench, RemedyWords.of(night));
        }
        return 0;
    }
}
