package polewright.cli;

import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import polewright.mount.rig.Rig;
import polewright.operations.Workbench;
import polewright.operations.setup.RigActions;
import polewright.session.jsonl.RigText;

@Command(
        name = "rig",
        description = {
            "Print the rig as a file to edit for begin --rig FILE; or correct tonight's rig.",
            "Its keys are in docs/events.md."
        })
final class RigCommand implements Callable<Integer> {
    private final Workbench workbench;

    @Mixin
    private RigOption rig;

    @Mixin
    private LogOption log;

    RigCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    static CommandLine of(Workbench workbench, CommandLine.IFactory factory) {
        return new CommandLine(new RigCommand(workbench), factory)
                .addSubcommand(ActionCommand.of(RigActions.CORRECT_RIG, workbench));
    }

    @Override
    public Integer call() {
        // The experience from earlier nights comes from the log when a night begins: in a file to be edited it would
        // become outdated.
        Rig bare = rig.rig(log.lastBegun(workbench)).withExperience(Optional.empty());
        workbench.out().print(RigText.write(bare));
        workbench.out().flush();
        return 0;
    }
}
