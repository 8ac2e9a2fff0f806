package polewright.cli;

import picocli.CommandLine.Option;
import polewright.alignment.camera.Drive;

/** What the right-ascension drive did meanwhile. */
public final class DriveOption {
    @Option(
            names = "--drive",
            paramLabel = "WORD",
            description = "Drive state: tracking or standing. Default: found from the frames; the axis does not"
                    + " depend on it.")
    private Drive drive = Drive.NOT_TOLD;

    public Drive told() {
        return drive;
    }
}
