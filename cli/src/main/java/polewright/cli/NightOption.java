package polewright.cli;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import polewright.session.NightId;
import polewright.store.NightLog;

/** Selects a night of a log. */
final class NightOption {
    @Option(names = "--night", paramLabel = "NUMBER", description = "Which night. Default: the last.")
    private @Nullable Long number;

    NightId in(NightLog opened) {
        return number == null ? LogOption.latest(opened) : new NightId(number);
    }
}
