package polewright.cli;

import java.lang.reflect.Constructor;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.BiFunction;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IFactory;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;
import polewright.operations.Workbench;
import polewright.operations.action.Action;
import polewright.operations.night.LogActions;
import polewright.operations.night.SkipAction;
import polewright.operations.night.TargetAction;
import polewright.operations.night.WedgeActions;

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
    private static final List<RootCommand> COMMANDS = List.of(
            RootCommand.of(GroundCommand.class),
            new RootCommand("begin", (bench, factory) -> BeginCommand.of(bench)),
            new RootCommand("sight", SightCommands::of),
            RootCommand.of(SkipAction.SKIP),
            RootCommand.of(WedgeActions.TURN),
            RootCommand.of(WedgeActions.CLAMP),
            RootCommand.of(WedgeActions.UNCLAMP),
            RootCommand.of(WedgeActions.KNOCK),
            new RootCommand("allow", (bench, factory) -> AllowCommand.of(bench)),
            new RootCommand("horizon", (bench, factory) -> HorizonCommand.of(bench)),
            RootCommand.of(LogActions.NOTE),
            RootCommand.of(LogActions.UNDO),
            RootCommand.of(LogActions.RETIME),
            RootCommand.of(FixCommand.class),
            RootCommand.of(NextCommand.class),
            RootCommand.of(AdviseCommand.class),
            RootCommand.of(LogCommand.class),
            RootCommand.of(ReplayCommand.class),
            RootCommand.of(WhereCommand.class),
            RootCommand.of(ChartCommand.class),
            new RootCommand("centre", (bench, factory) -> CentreCommand.of(bench)),
            RootCommand.of(PointingCommand.class),
            RootCommand.of(TonightCommand.class),
            RootCommand.of(TargetAction.TARGET),
            RootCommand.of(StarsCommand.class),
            new RootCommand("upright", (bench, factory) -> UprightCommand.of(bench, factory)),
            RootCommand.of(AttitudeCommand.class),
            RootCommand.of(AxisCommand.class),
            RootCommand.of(WatchCommand.class),
            new RootCommand("devices", DevicesCommand::of),
            new RootCommand("rig", RigCommand::of),
            new RootCommand("site", SiteCommand::of),
            RootCommand.of(DemoCommand.class),
            new RootCommand("practice", PracticeCommands::of));

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
        meant(all(further), args)
                .forEach(command -> commands.addSubcommand(command.making().apply(workbench, factory)));
        return commands;
    }

    /** Only the named command: constructing all of them takes longer than most of them run. */
    private static List<RootCommand> meant(List<RootCommand> all, String... args) {
        List<RootCommand> named = all.stream()
                .filter(command -> args.length > 0 && command.name().equals(args[0]))
                .toList();
        return named.isEmpty() ? all : named;
    }

    /** In the order of the help: the further ones before the devices command, which concerns them. */
    private static List<RootCommand> all(List<Class<?>> further) {
        List<RootCommand> all = new ArrayList<>(COMMANDS);
        int devices = all.stream().map(RootCommand::name).toList().indexOf("devices");
        all.addAll(devices, further.stream().map(RootCommand::of).toList());
        all.add(new RootCommand(
                "completion",
                (bench, factory) -> new CommandLine(new CompletionCommand(bench, () -> commands(bench, further)))));
        return List.copyOf(all);
    }

    /** A command directly under the root: from a class, or from the table of actions. */
    private record RootCommand(String name, BiFunction<Workbench, IFactory, CommandLine> making) {
        static RootCommand of(Class<?> type) {
            return new RootCommand(
                    type.getAnnotation(Command.class).name(), (bench, factory) -> new CommandLine(type, factory));
        }

        static RootCommand of(Action action) {
            return new RootCommand(
                    String.join(" ", action.command()), (bench, factory) -> ActionCommand.of(action, bench));
        }
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
