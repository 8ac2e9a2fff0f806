package polewright.cli;

import picocli.CommandLine.Option;

/** Confirms a value that looks like a typing error. */
final class AsTypedOption {
    static final String NAME = "--as-typed";

    @Option(names = NAME, description = "Log it as typed, even if it looks like a mistake.")
    private boolean isConfirmed;

    boolean isConfirmed() {
        return isConfirmed;
    }
}
