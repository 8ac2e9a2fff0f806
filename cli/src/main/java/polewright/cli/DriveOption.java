package polewright.cli;

import picocli.CommandLine.Option;
import polewright.alignment.camera.Drive;

/** State of the right-ascension drive during the sighting. */
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
