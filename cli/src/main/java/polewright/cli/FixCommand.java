package polewright.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import polewright.operations.Workbench;
import polewright.report.json.NightJson;
import polewright.report.text.FixWords;
import polewright.session.NightState;
import polewright.store.NightLog;

@Command(name = "fix", description = "Show where the axis points, from all of tonight's sightings.")
final class FixCommand implements Callable<Integer> {
    private final Workbench workbench;

    @Mixin
    private LogOption log;

    @Mixin
    private Output output;

    FixCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        NightState night = tonight(log, workbench);
        if (output.isJson()) {
            output.print(workbench, NightJson.fix(night));
        } else {
            output.report(workbench, FixWords.full(night));
            output.say(workbench, RemedyWords.of(night));
        }
        return 0;
    }

    static NightState tonight(LogOption log, Workbench workbench) {
        try (NightLog opened = log.openExisting(workbench)) {
            return NightState.of(opened.events(LogOption.latest(opened)), workbench.now(), new NightState.ModelCache());
        }
    }
}
