package polewright.cli;

import java.util.Optional;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import polewright.session.NightId;
import polewright.store.KnownState;

/** The sender's knowledge of the log; if the log has changed, the command is not logged, and the exit status is 3. */
final class KnownOptions {
    @Option(
            names = "--if-night",
            paramLabel = "NUMBER",
            description = "Log it only if this is still the last night; its number is in log nights.")
    private @Nullable Long night;

    @Option(
            names = "--if-last",
            paramLabel = "NUMBER",
            description = "Log it only if this is still the night's last event; its number is in the log.")
    private @Nullable Long lastSeq;

    KnownState known() {
        return new KnownState(
                Optional.ofNullable(night).map(number -> WrongUsage.unlessUsable(() -> new NightId(number))),
                lastSeq == null ? OptionalLong.empty() : OptionalLong.of(lastSeq));
    }
}
