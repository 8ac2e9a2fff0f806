package polewright.operations.setup;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import polewright.mount.rig.Rig;
import polewright.operations.OperationFailed;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.FileName;
import polewright.session.jsonl.RigText;
import polewright.sky.InputRefused;

/** A rig in a file. */
public final class RigFile {
    public static final Argument<Path> RIG =
            Argument.option("rig", "Rig file", "The rig command prints one to edit.", new FileName("FILE"));

    private RigFile() {}

    /**
     * Reads it.
     *
     * @throws OperationFailed if it cannot be read or is none
     */
    public static Rig read(Path file) {
        try {
            return RigText.read(Files.readString(file, StandardCharsets.UTF_8));
        } catch (InputRefused refused) {
            // The name was right; the file needs correcting.
            throw new OperationFailed(file + ": " + refused.getMessage());
        } catch (IOException e) {
            throw new OperationFailed("the rig file " + file
                    + " cannot be read. Check its name, or print one with polewright rig > rig.json.");
        }
    }
}
