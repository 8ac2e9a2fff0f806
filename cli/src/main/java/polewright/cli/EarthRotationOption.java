package polewright.cli;

import picocli.CommandLine.Option;

/** UT1 − UTC, if known. */
final class EarthRotationOption {
    @Option(
            names = "--ut1-utc",
            paramLabel = "SECONDS",
            description = "UT1-UTC from the IERS bulletin. Default: 0, which may rotate the sky by up to 13\".")
    private double ut1MinusUtcSeconds;

    double ut1MinusUtcSeconds() {
        return ut1MinusUtcSeconds;
    }
}
