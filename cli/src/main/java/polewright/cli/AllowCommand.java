package polewright.cli;

import java.util.List;
import picocli.CommandLine;
import polewright.alignment.allowance.ItemTolerance;
import polewright.operations.Workbench;
import polewright.operations.action.Action;
import polewright.operations.work.WorkActions;
import polewright.report.json.ZoneJson;
import polewright.report.text.ZoneWords;
import polewright.session.NightState;
import polewright.session.event.NightEvent;

/** Sets what tonight is for, or shows it. */
final class AllowCommand extends WorkCommand {
    private AllowCommand(Workbench workbench) {
        super(workbench, WorkActions.ALLOW);
    }

    static CommandLine of(Workbench workbench) {
        CommandLine allow = line(new AllowCommand(workbench));
        ActionArguments.describe(allow, "Without arguments: show the work and the tolerance.");
        for (Action action : WorkActions.ofItems()) {
            allow.addSubcommand(WorkCommand.of(action, workbench));
        }
        return allow;
    }

    @Override
    public Integer call() {
        return values().isEmpty() ? show() : super.call();
    }

    private int show() {
        NightState night = FixCommand.tonight(log(), bench());
        NightEvent.Begun begun = night.begun();
        List<ItemTolerance> tolerances = night.work()
                .map(work -> ItemTolerance.each(begun.site(), begun.weather(), begun.rig(), work))
                .orElse(List.of());
        if (output().isJson()) {
            output().print(bench(), ZoneJson.full(night.allowance(), tolerances));
        } else {
            output().report(bench(), ZoneWords.full(night, tolerances));
        }
        afterwards(night);
        return 0;
    }
}
