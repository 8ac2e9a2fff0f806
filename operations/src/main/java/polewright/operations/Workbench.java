package polewright.operations;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Map;
import java.util.Optional;

/**
 * The environment of a command.
 *
 * @param clock the time now
 * @param environment the process's environment variables
 * @param out results
 * @param err complaints and cautions that are not results
 * @param terminal whether the output goes to a terminal, where a line may be overwritten and progress shown
 * @param pause how to wait
 */
public record Workbench(
        Clock clock, Map<String, String> environment, PrintWriter out, PrintWriter err, boolean terminal, Pause pause) {
    private static final String LOG_FILE = "nights.sqlite";

    /** The same with another clock. */
    public Workbench at(Clock another) {
        return new Workbench(another, environment, out, err, terminal, pause);
    }

    /** The time now, to the second: a watch is not read more precisely. */
    public Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.SECONDS);
    }

    /**
     * The default log: {@code POLEWRIGHT_LOG}, or {@code nights.sqlite} in this program's folder under the user's
     * data home (XDG Base Directory Specification).
     */
    public Path defaultLog() {
        String named = environment.get("POLEWRIGHT_LOG");
        if (named != null && !named.isBlank()) {
            return Path.of(named);
        }
        return dataFolder().resolve(LOG_FILE);
    }

    /**
     * The folder of this program's files. A relative path in the environment is ignored, as that specification
     * requires: it would mean another folder wherever a command is typed.
     *
     * @throws OperationFailed if the environment names no home
     */
    public Path dataFolder() {
        Optional<Path> dataHome = wholePath("XDG_DATA_HOME");
        if (dataHome.isPresent()) {
            return dataHome.get().resolve("polewright");
        }
        return wholePath("HOME")
                .map(home -> home.resolve(".local").resolve("share").resolve("polewright"))
                .orElseThrow(
                        () -> new OperationFailed("your home folder is not known because HOME is not set. Set it, or"
                                + " name the log file with POLEWRIGHT_LOG or --log."));
    }

    private Optional<Path> wholePath(String variable) {
        return Optional.ofNullable(environment.get(variable))
                .filter(path -> !path.isBlank())
                .map(Path::of)
                .filter(Path::isAbsolute);
    }
}
