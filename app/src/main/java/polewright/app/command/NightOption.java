package polewright.app.command;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import polewright.night.log.NightId;
import polewright.night.log.NightLog;

/** Which night of a log. */
final class NightOption {
    @Option(names = "--night", paramLabel = "NUMBER", description = "Which night. Default: the last.")
    private @Nullable Long number;

    NightId in(NightLog opened) {
        return number == null ? LogOption.latest(opened) : new NightId(number);
    }
}
