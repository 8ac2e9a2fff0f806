package polewright.cli;

import picocli.CommandLine.Option;

/** Whether what looks like a slip has been looked at again, and is meant. */
final class AsTypedOption {
    static final String NAME = "--as-typed";

    @Option(names = NAME, description = "Log it as typed, even if it looks like a mistake.")
    private boolean isConfirmed;

    boolean isConfirmed() {
        return isConfirmed;
    }
}
