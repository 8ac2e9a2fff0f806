package polewright.cli;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import polewright.store.SubmissionKey;

/** Whether the same command may have been sent before. */
final class OnceOption {
    @Option(
            names = "--once",
            paramLabel = "KEY",
            description = "Run only if nothing was logged under this key, so that a command whose answer was"
                    + " lost can be sent again. 8 to 64 letters, digits, - or _, chosen at random.")
    private @Nullable String key;

    Optional<SubmissionKey> key() {
        return Optional.ofNullable(key).map(text -> WrongUsage.unlessUsable(() -> new SubmissionKey(text)));
    }
}
