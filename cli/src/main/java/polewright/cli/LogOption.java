package polewright.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import polewright.operations.LogEntry;
import polewright.operations.OperationFailed;
import polewright.operations.Workbench;
import polewright.session.NightId;
import polewright.session.StandingEvents;
import polewright.session.event.NightEvent;
import polewright.store.NightLog;

/** The log file. */
final class LogOption {
    @Option(
            names = "--log",
            paramLabel = "FILE",
            description = "The log to use. Default: $POLEWRIGHT_LOG, or nights.sqlite in your data folder.")
    private @Nullable Path log;

    Path file(Workbench workbench) {
        return log == null ? workbench.defaultLog() : log;
    }

    /** {@code --log FILE} with a blank before it, for a suggested command; empty for the default log. */
    String asTyped() {
        return log == null ? "" : " --log " + (log.toString().contains(" ") ? "\"" + log + "\"" : log);
    }

    NightLog open(Workbench workbench) {
        NightLog opened = NightLog.open(file(workbench));
        opened.damage().ifPresent(what -> {
            workbench
                    .err()
                    .println(file(workbench) + " is damaged (" + what
                            + "). What can be read is shown; nothing can be logged."
                            + " To copy what can be read into a new file: polewright log rescue nights.jsonl"
                            + asTyped());
            workbench.err().flush();
        });
        return opened;
    }

    /** Opens an existing log; reading commands create none. */
    NightLog openExisting(Workbench workbench) {
        Path file = file(workbench);
        if (!Files.exists(file)) {
            throw new OperationFailed(
                    "there is no log yet at " + file + ". Begin a night first, with polewright begin --site LAT,LON.");
        }
        return open(workbench);
    }

    /** How the last night of the log began, including later corrections, if there is one: the source of defaults. */
    Optional<NightEvent.Begun> lastBegun(Workbench workbench) {
        if (!Files.exists(file(workbench))) {
            return Optional.empty();
        }
        try (NightLog opened = NightLog.open(file(workbench))) {
            return lastBegun(opened);
        }
    }

    static Optional<NightEvent.Begun> lastBegun(NightLog opened) {
        return opened.latest().flatMap(night -> StandingEvents.beginning(opened.events(night)));
    }

    static NightId latest(NightLog opened) {
        return LogEntry.latestNight(opened);
    }
}
