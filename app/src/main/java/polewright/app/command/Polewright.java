package polewright.app.command;

import java.lang.reflect.Constructor;
import java.util.Objects;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IFactory;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import polewright.app.JobFailed;
import polewright.app.Workbench;
import polewright.sky.InputRefused;

/** The root of all commands, and the one place where a failure becomes a line of text and an exit status. */
@Command(
        name = "polewright",
        mixinStandardHelpOptions = true,
        version = "polewright 0.1",
        description = "From bare ground to a polar axis good enough for tonight's work.",
        footer = {
            "",
            "A first night: ground, begin, sight compass, sight scale, advise; then do as it says.",
            "Exit status: 0 good, 1 the job failed, 2 wrong usage."
        },
        subcommands = {
            GroundCommand.class,
            BeginCommand.class,
            SightCommands.class,
            WedgeCommands.Turn.class,
            WedgeCommands.Clamp.class,
            WedgeCommands.Unclamp.class,
            WedgeCommands.Knock.class,
            WedgeCommands.Allow.class,
            WedgeCommands.Note.class,
            WedgeCommands.Undo.class,
            FixCommand.class,
            AdviseCommand.class,
            LogCommand.class,
            ReplayCommand.class,
            WhereCommand.class,
            RigCommand.class,
            DemoCommand.class
        })
public final class Polewright implements Callable<Integer> {
    private static final int JOB_FAILED = 1;
    private static final int WRONG_USAGE = 2;

    @Spec
    private CommandSpec spec;

    Polewright() {}

    /** Runs one command line; returns the exit status. */
    public static int run(Workbench workbench, String... args) {
        CommandLine commands = new CommandLine(Polewright.class, new WorkbenchFactory(workbench));
        commands.setOut(workbench.out());
        commands.setErr(workbench.err());
        commands.setCaseInsensitiveEnumValuesAllowed(true);
        commands.setUsageHelpAutoWidth(true);
        commands.setParameterExceptionHandler((e, typed) -> wrongUsage(e, workbench));
        commands.setExecutionExceptionHandler((e, line, parsed) -> failed(e, line, workbench));
        return commands.execute(args);
    }

    @Override
    public Integer call() {
        spec.commandLine().usage(spec.commandLine().getOut());
        return 0;
    }

    private static int wrongUsage(ParameterException e, Workbench workbench) {
        CommandLine line = e.getCommandLine();
        RuntimeException told = e.getCause() instanceof InputRefused refused ? refused : e;
        complain(workbench, line, message(told).lines().findFirst().orElse(""));
        workbench.err().println("Usage: " + line.getCommandSpec().qualifiedName() + " --help");
        workbench.err().flush();
        return WRONG_USAGE;
    }

    private static int failed(Exception e, CommandLine line, Workbench workbench) {
        if (e instanceof InputRefused || e instanceof JobFailed) {
            complain(workbench, line, message(e));
            return JOB_FAILED;
        }
        complain(
                workbench,
                line,
                "something inside Polewright is wrong (" + e.getClass().getSimpleName()
                        + "); what was logged before is safe. Please report what you typed.");
        if (workbench.environment().containsKey("POLEWRIGHT_DEBUG")) {
            e.printStackTrace(workbench.err());
        }
        return JOB_FAILED;
    }

    private static void complain(Workbench workbench, CommandLine line, String message) {
        workbench.err().println(line.getCommandSpec().qualifiedName() + ": " + message);
        workbench.err().flush();
    }

    private static String message(Exception e) {
        return Objects.requireNonNullElse(e.getMessage(), "that is not how this command is used");
    }

    /** Hands the workbench to the commands that ask for it. */
    private record WorkbenchFactory(Workbench workbench) implements IFactory {
        @Override
        public <K> K create(Class<K> type) throws Exception {
            for (Constructor<?> constructor : type.getDeclaredConstructors()) {
                if (constructor.getParameterCount() == 1 && constructor.getParameterTypes()[0] == Workbench.class) {
                    return type.cast(constructor.newInstance(workbench));
                }
            }
            return CommandLine.defaultFactory().create(type);
        }
    }
}
