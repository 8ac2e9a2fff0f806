package polewright.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import polewright.operations.OperationFailed;
import polewright.operations.input.SkylineInput;
import polewright.sky.InputRefused;
import polewright.sky.place.Horizon;

/** Reads a skyline from a file. */
final class SkylineFile {
    private SkylineFile() {}

    static Horizon read(Path file) {
        try {
            return SkylineInput.ofCsv(Files.readString(file, StandardCharsets.UTF_8));
        } catch (InputRefused refused) {
            throw new OperationFailed(file + ": " + refused.getMessage());
        } catch (IOException e) {
            throw new OperationFailed(file + " cannot be read. Give a text file of azimuths and altitudes.");
        }
    }
}
