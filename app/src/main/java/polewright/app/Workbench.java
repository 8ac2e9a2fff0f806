package polewright.app;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Map;

/**
 * What a command may reach for outside itself.
 *
 * @param clock the time now
 * @param environment the process's environment variables
 * @param out results
 * @param err complaints and cautions that are not results
 * @param terminal whether a person watches what is printed: then a line may be written over, and progress shown
 * @param pause how to wait
 */
public record Workbench(
        Clock clock, Map<String, String> environment, PrintWriter out, PrintWriter err, boolean terminal, Pause pause) {
    private static final String LOG_FILE = "nights.sqlite";

    /** Now, to the second: nobody reads a watch closer than that. */
    public Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.SECONDS);
    }

    /**
     * The log to use when none is named: {@code POLEWRIGHT_LOG}, or {@code nights.sqlite} in this program's folder under
     * the user's data home (XDG Base Directory Specification).
     */
    public Path defaultLog() {
        String named = environment.get("POLEWRIGHT_LOG");
        if (named != null && !named.isBlank()) {
            return Path.of(named);
        }
        return dataFolder().resolve(LOG_FILE);
    }

    /** Where this program keeps its files. */
    public Path dataFolder() {
        String dataHome = environment.get("XDG_DATA_HOME");
        if (dataHome != null && !dataHome.isBlank()) {
            return Path.of(dataHome, "polewright");
        }
        return Path.of(environment.getOrDefault("HOME", "."), ".local", "share", "polewright");
    }
}
