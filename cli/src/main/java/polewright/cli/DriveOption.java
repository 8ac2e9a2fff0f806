package polewright.cli;

import picocli.CommandLine.Option;
import polewright.alignment.camera.Drive;

/** What the right-ascension drive did meanwhile. */
public final class DriveOption {
    @Option(
            names = "--drive",
            paramLabel = "WORD",
            description = "What the drive did: tracking or standing. Default: as the frames tell; the axis does not"
                    + " depend on it.")
    private Drive drive = Drive.NOT_TOLD;

    public Drive told() {
        return drive;
    }
}
