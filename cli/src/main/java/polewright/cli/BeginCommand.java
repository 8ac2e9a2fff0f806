package polewright.cli;

import java.nio.file.Files;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Mixin;
import polewright.operations.Workbench;
import polewright.operations.action.BeginningContext;
import polewright.operations.action.Effect;
import polewright.operations.action.NightBeginning;
import polewright.operations.setup.BeginNight;
import polewright.report.json.NightJson;
import polewright.report.text.AdviceWords;
import polewright.report.text.BeginWords;

/** Begins a night. */
final class BeginCommand implements Callable<Integer> {
    private final Workbench workbench;
    private final ActionArguments arguments = new ActionArguments(BeginNight.BEGIN);

    @Mixin
    private LogOption log;

    @Mixin
    private OnceOption once;

    @Mixin
    private Output output;

    private BeginCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    static CommandLine of(Workbench workbench) {
        BeginCommand command = new BeginCommand(workbench);
        return command.arguments.addedTo(command);
    }

    @Override
    public Integer call() {
        warnIfDamaged();
        NightBeginning beginning = begin();
        if (output.isJson()) {
            output.print(workbench, NightJson.afterEvent(beginning.event(), beginning.after()));
            return 0;
        }
        if (beginning instanceof NightBeginning.Begun begun) {
            output.say(workbench, BeginWords.of(begun));
            BeginWords.remarks(begun)
                    .forEach(remark -> output.say(workbench, arguments.wording().of(remark.line())));
        } else {
            output.say(workbench, "Already begun; nothing added.");
        }
        output.report(workbench, AdviceWords.of(beginning.after()));
        return 0;
    }

    private NightBeginning begin() {
        Effect.Beginning effect = (Effect.Beginning) arguments.action().effect();
        BeginningContext context = new BeginningContext(
                log.file(workbench),
                workbench.now(),
                workbench.clock().getZone(),
                once.key(),
                false,
                arguments.isConfirmed());
        return arguments.worded(() -> effect.begin(arguments.entries(), context));
    }

    private void warnIfDamaged() {
        if (Files.exists(log.file(workbench))) {
            // Opening it here prints the warning.
            log.open(workbench).close();
        }
    }
}
