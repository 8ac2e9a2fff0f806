package polewright.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import polewright.mount.rig.Rig;
import polewright.operations.setup.RigFile;
import polewright.session.event.NightEvent;

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
        return RigFile.read(file);
    }
}
