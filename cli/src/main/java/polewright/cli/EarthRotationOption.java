package polewright.cli;

import picocli.CommandLine.Option;

/** How far the Earth has turned against the clock, for those who know it. */
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
