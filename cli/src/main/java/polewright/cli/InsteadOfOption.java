package polewright.cli;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import polewright.operations.sighting.Replacement;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;

/** Replaces a measurement that was entered wrongly. */
final class InsteadOfOption {
    @Option(
            names = "--instead-of",
            paramLabel = "SEQ",
            description = "Replace sighting or centring SEQ, which was entered wrongly. Default for --at: its time.")
    private @Nullable Long seq;

    /** The number of the replaced measurement, if any. */
    Optional<Long> seq() {
        return Optional.ofNullable(seq);
    }

    /**
     * The measurement as last entered.
     *
     * @param night all of the night
     */
    Optional<Replacement> replaced(List<LoggedEvent> night) {
        return seq().map(number -> Replacement.of(number, night));
    }

    /** The event to log: the measurement itself, or its replacement of the other. */
    NightEvent event(NightEvent.Measurement measured, List<LoggedEvent> night) {
        return Replacement.event(measured, seq(), night);
    }

    /** {@code , in place of #5}, or nothing. */
    String words() {
        return seq().map(number -> ", in place of #" + number).orElse("");
    }
}
