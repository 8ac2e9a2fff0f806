package polewright.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import polewright.mount.rig.Rig;
import polewright.operations.OperationFailed;
import polewright.session.event.NightEvent;
import polewright.session.jsonl.RigText;
import polewright.sky.InputRefused;

/** The rig file. */
final class RigOption {
    @Option(
            names = "--rig",
            paramLabel = "FILE",
            description = "A rig file (polewright rig prints one to edit). Default: the last night's rig.")
    private @Nullable Path file;

    /** Whether a file was named. */
    boolean isGiven() {
        return file != null;
    }

    Rig rig(Optional<NightEvent.Begun> remembered) {
        if (file == null) {
            return remembered.map(NightEvent.Begun::rig).orElseGet(Rig::typicalForkOnWedge);
        }
        try {
            return RigText.read(Files.readString(file, StandardCharsets.UTF_8));
        } catch (InputRefused refused) {
            // The option was valid; the file needs correcting.
            throw new OperationFailed(file + ": " + refused.getMessage());
        } catch (IOException e) {
            throw new OperationFailed("the rig file " + file
                    + " cannot be read. Check its name, or print one with polewright rig > rig.json.");
        }
    }
}
