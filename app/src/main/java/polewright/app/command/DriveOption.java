package polewright.app.command;

import picocli.CommandLine.Option;
import polewright.axis.camera.Drive;

/** What the right-ascension drive did meanwhile. */
final class DriveOption {
    @Option(
            names = "--drive",
            paramLabel = "WORD",
            description = "What the drive did: tracking or standing. Default: as the frames tell; the axis does not"
                    + " depend on it.")
    private Drive drive = Drive.NOT_TOLD;

    Drive told() {
        return drive;
    }
}
