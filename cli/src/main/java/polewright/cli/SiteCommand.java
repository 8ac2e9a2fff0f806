package polewright.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import polewright.operations.OperationFailed;
import polewright.operations.Workbench;
import polewright.operations.setup.SiteActions;
import polewright.report.text.AngleWords;
import polewright.session.event.NightEvent;

@Command(name = "site", description = "Print tonight's site, or correct it.")
final class SiteCommand implements Callable<Integer> {
    private final Workbench workbench;

    @Mixin
    private LogOption log;

    @Mixin
    private TerminalOutput output;

    SiteCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    static CommandLine of(Workbench workbench, CommandLine.IFactory factory) {
        return new CommandLine(new SiteCommand(workbench), factory)
                .addSubcommand(ActionCommand.of(SiteActions.CORRECT_SITE, workbench));
    }

    @Override
    public Integer call() {
        NightEvent.Begun begun = log.lastBegun(workbench)
                .orElseThrow(() -> new OperationFailed(
                        "no site is known yet. Begin a night with polewright begin --site LAT,LON."));
        output.say(workbench, begun.siteName() + ": " + AngleWords.site(begun.site()));
        return 0;
    }
}
