package polewright.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import polewright.operations.JobFailed;
import polewright.operations.input.SkylineInput;
import polewright.sky.InputRefused;
import polewright.sky.place.Horizon;

/** A skyline from a file. */
final class SkylineFile {
    private SkylineFile() {}

    static Horizon read(Path file) {
        try {
            return SkylineInput.ofCsv(Files.readString(file, StandardCharsets.UTF_8));
        } catch (InputRefused refused) {
            throw new JobFailed(file + ": " + refused.getMessage());
        } catch (IOException e) {
            throw new JobFailed(file + " cannot be read: name a text file of azimuths and altitudes.");
        }
    }
}
