package polewright.cli;

import java.lang.reflect.Constructor;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IFactory;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;
import polewright.operations.Workbench;

/** The root of all commands. */
@Command(
        name = "polewright",
        version = "polewright 0.1",
        description = "From bare ground to a polar axis good enough for tonight's work.",
        footer = {
            "",
            "A first night: ground, begin, sight compass, sight scale, advise. Then follow",
            "the advice. Each command lists its options with --help.",
            "",
            "Exit status:",
            "  0  success",
            "  1  the command was understood but failed: a file, the log, the sky",
            "  2  bad input: an option, a number, a year outside 1972 to 2100",
            "  3  not logged: the log has changed (--if-night, --if-last)",
            "  4  not logged: the log cannot be read or written at the moment",
            "  5  not logged: it looks like a mistake (--as-typed confirms it)",
            "A failure never loses or changes what is already logged."
        })
public final class Polewright implements Callable<Integer> {
    private static final List<Class<?>> COMMANDS = List.of(
            GroundCommand.class,
            BeginCommand.class,
            SightCommands.class,
            SkipCommand.class,
            WedgeCommands.Turn.class,
            WedgeCommands.Clamp.class,
            WedgeCommands.Unclamp.class,
            WedgeCommands.Knock.class,
            AllowCommand.class,
            HorizonCommand.class,
            WedgeCommands.Note.class,
            WedgeCommands.Undo.class,
            RetimeCommand.class,
            FixCommand.class,
            NextCommand.class,
            AdviseCommand.class,
            LogCommand.class,
            ReplayCommand.class,
            WhereCommand.class,
            ChartCommand.class,
            CentreCommand.class,
            PointingCommand.class,
            TonightCommand.class,
            TargetCommand.class,
            StarsCommand.class,
            UprightCommand.class,
            AttitudeCommand.class,
            AxisCommand.class,
            WatchCommand.class,
            DevicesCommand.class,
            RigCommand.class,
            SiteCommand.class,
            DemoCommand.class,
            PracticeCommands.class);

    // Handled by the parser itself.
    @SuppressWarnings("UnusedVariable")
    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            scope = ScopeType.INHERIT,
            description = "Show this help.")
    private boolean help;

    @SuppressWarnings("UnusedVariable")
    @Option(
            names = {"-V", "--version"},
            versionHelp = true,
            description = "Show the version.")
    private boolean version;

    @Spec
    private CommandSpec spec;

    Polewright() {}

    /**
     * Runs one command line.
     *
     * @param further commands added by other modules, such as the web server
     * @return the exit status
     */
    public static int run(Workbench workbench, List<Class<?>> further, String... args) {
        CommandLine commands = commands(workbench, further, args);
        commands.setOut(workbench.out());
        commands.setErr(workbench.err());
        commands.setUsageHelpAutoWidth(true);
        // A word that is quoted on purpose stays whole, and an empty one stays empty.
        commands.setTrimQuotes(false);
        ArgumentTypes.register(commands);
        ErrorReports complaints = new ErrorReports(workbench, TerminalOutput.wantsRed(args));
        commands.setParameterExceptionHandler((e, typed) -> complaints.wrongUsage(e, typed));
        commands.setExecutionExceptionHandler((e, line, parsed) -> complaints.failed(e, line));
        return commands.execute(args);
    }

    /** The command that is named first; all of them if it is unknown. */
    public static CommandLine commands(Workbench workbench, List<Class<?>> further, String... args) {
        IFactory factory = new WorkbenchFactory(workbench);
        CommandLine commands = new CommandLine(Polewright.class, factory);
        meant(all(further), args).forEach(type -> commands.addSubcommand(new CommandLine(type, factory)));
        return commands;
    }

    /** Only the named command: constructing all of them takes longer than most of them run. */
    private static List<Class<?>> meant(List<Class<?>> all, String... args) {
        List<Class<?>> named = all.stream()
                .filter(type -> args.length > 0
                        && type.getAnnotation(Command.class).name().equals(args[0]))
                .toList();
        return named.isEmpty() ? all : named;
    }

    /** In the order of the help: the further ones before the devices command, which concerns them. */
    private static List<Class<?>> all(List<Class<?>> further) {
        List<Class<?>> all = new ArrayList<>(COMMANDS);
        all.addAll(all.indexOf(DevicesCommand.class), further);
        return List.copyOf(all);
    }

    @Override
    public Integer call() {
        spec.commandLine().usage(spec.commandLine().getOut());
        return 0;
    }

    /** Passes the workbench to the commands that need it. */
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
