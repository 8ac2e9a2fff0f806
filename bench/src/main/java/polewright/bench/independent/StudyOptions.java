package polewright.bench.independent;

import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.function.LongFunction;
import java.util.stream.LongStream;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The study to run, and its nights. */
@Command(name = "bench/independent")
final class StudyOptions {
    /** The studies. */
    enum Study {
        screws,
        mistakes,
        honest,
        scatter
    }

    private static final int WRONG_USAGE = 2;

    @Parameters(index = "0", paramLabel = "STUDY", description = "One of ${COMPLETION-CANDIDATES}.")
    private Study study = Study.screws;

    @Option(names = "--from", paramLabel = "SEED", description = "The first seed. Default: ${DEFAULT-VALUE}.")
    private long from = 1;

    @Option(
            names = "--count",
            paramLabel = "N",
            description = "How many seeds; of each mistake. Default: ${DEFAULT-VALUE}.")
    private int count = 200;

    @Option(
            names = "--allowance",
            paramLabel = "ARCMIN",
            description = "How far off the axis may be. Default: ${DEFAULT-VALUE}.")
    private double allowance = 5;

    @Option(names = "--threads", paramLabel = "N", description = "Nights played at once. Default: ${DEFAULT-VALUE}.")
    private int threads = 1;

    @Option(names = "--correcting", description = "Mistakes are corrected as soon as they are named rightly.")
    private boolean correcting;

    @Option(
            names = "--only",
            paramLabel = "MISTAKE",
            description = "Only nights of this mistake; may be given again. One of ${COMPLETION-CANDIDATES}.")
    private List<Mistake> only = List.of(Mistake.values());

    @Option(names = "--tell", description = "Tell every night, event by event.")
    private boolean tell;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help.")
    @SuppressWarnings("UnusedVariable")
    private boolean help;

    /** The parsed options; invalid ones end the process with a sentence and status 2. */
    static StudyOptions of(String[] args) {
        StudyOptions options = new StudyOptions();
        CommandLine commands = new CommandLine(options);
        try {
            commands.parseArgs(args);
            if (CommandLine.printHelpIfRequested(commands.getParseResult())) {
                System.exit(0);
            }
            if (options.count < 1 || options.threads < 1) {
                throw new CommandLine.ParameterException(commands, "--count and --threads are 1 or more");
            }
        } catch (CommandLine.ParameterException e) {
            System.err.println("bench/independent: " + e.getMessage());
            System.err.println("See bench/independent --help");
            System.exit(WRONG_USAGE);
        }
        return options;
    }

    Study study() {
        return study;
    }

    double allowanceArcmin() {
        return allowance;
    }

    long from() {
        return from;
    }

    boolean isCorrecting() {
        return correcting;
    }

    /** The mistakes whose nights are played. */
    List<Mistake> mistakes() {
        return List.copyOf(only);
    }

    boolean describesOneNight() {
        return tell;
    }

    String seeds() {
        return count + " nights, seeds " + from + " to " + (from + count - 1);
    }

    /** One night for each seed, in order of the seeds. */
    <T> List<T> played(LongFunction<T> night) {
        LongStream seeds = LongStream.range(from, from + count);
        if (threads == 1) {
            return seeds.mapToObj(night).toList();
        }
        Callable<List<T>> all = () -> seeds.parallel().mapToObj(night).toList();
        ForkJoinPool pool = new ForkJoinPool(threads);
        try {
            return pool.submit(all).get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while nights were played", e);
        } catch (ExecutionException e) {
            throw new IllegalStateException("a night could not be played", e.getCause());
        } finally {
            pool.shutdown();
        }
    }
}
