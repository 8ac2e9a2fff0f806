package polewright.bench;

import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

/**
 * The random trials that a bench is to run.
 *
 * @param first seed
 * @param count of seeds
 * @param single whether one seed is to be described
 * @param file to write its frame to
 */
public record TrialOptions(long first, int count, boolean single, Optional<Path> file) {
    private static final int WRONG_USAGE = 2;

    /** The options of every bench of random trials. */
    private static class Typed {
        @Option(names = "--from", paramLabel = "SEED", description = "The first seed. Default: ${DEFAULT-VALUE}.")
        private long from = 1;

        @Option(names = "--count", paramLabel = "N", description = "How many seeds. Default: ${DEFAULT-VALUE}.")
        private int count;

        // Read only by picocli.
        @SuppressWarnings("UnusedVariable")
        @Option(
                names = {"-h", "--help"},
                usageHelp = true,
                description = "Show this help.")
        private boolean help;

        TrialOptions options() {
            return new TrialOptions(from, count, false, Optional.empty());
        }
    }

    private static final class TypedOrOne extends Typed {
        @Option(names = "--seed", paramLabel = "N", description = "Describe the trial of this seed alone.")
        private @Nullable Long seed;

        @Parameters(arity = "0..1", paramLabel = "FILE", description = "With --seed: where to write its frame.")
        private @Nullable Path file;

        @Override
        TrialOptions options() {
            return seed == null ? super.options() : new TrialOptions(seed, 1, true, Optional.ofNullable(file));
        }
    }

    /**
     * {@code [--from SEED] [--count N]}; invalid options end the process with a sentence and status 2.
     *
     * @param bench its name under {@code bench/}
     */
    public static TrialOptions of(String bench, String[] args, int usualCount) {
        return orExit(commands(bench, new Typed(), usualCount), args);
    }

    /** The same, or {@code --seed N [FILE]}. */
    public static TrialOptions orOne(String bench, String[] args, int usualCount) {
        return orExit(commands(bench, new TypedOrOne(), usualCount), args);
    }

    private static CommandLine commands(String bench, Typed typed, int usualCount) {
        typed.count = usualCount;
        return new CommandLine(typed).setCommandName("bench/" + bench);
    }

    private static TrialOptions orExit(CommandLine commands, String[] args) {
        try {
            TrialOptions options = parsed(commands, args);
            if (CommandLine.printHelpIfRequested(commands.getParseResult())) {
                System.exit(0);
            }
            return options;
        } catch (ParameterException e) {
            System.err.println(commands.getCommandName() + ": " + e.getMessage());
            System.err.println("See " + commands.getCommandName() + " --help");
            System.exit(WRONG_USAGE);
            throw e;
        }
    }

    private static TrialOptions parsed(CommandLine commands, String[] args) {
        commands.parseArgs(args);
        TrialOptions options = commands.<Typed>getCommand().options();
        if (options.count < 1) {
            throw new ParameterException(commands, "--count " + options.count + " is below 1");
        }
        return options;
    }
}
