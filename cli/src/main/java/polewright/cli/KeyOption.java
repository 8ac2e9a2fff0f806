package polewright.cli;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Makes a command idempotent: it is done once however often it is sent. */
final class KeyOption {
    @Option(
            names = "--key",
            paramLabel = "KEY",
            description = "A key that was used before does nothing the second time.")
    private @Nullable String key;

    Optional<String> given() {
        return Optional.ofNullable(key).filter(text -> !text.isBlank());
    }
}
