package polewright.cli;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import polewright.operations.OperationFailed;
import polewright.simulation.Photograph;
import polewright.simulation.fits.FitsFile;
import polewright.store.disk.NotWritten;
import polewright.store.disk.WholeFile;

/** The demo's frames: those not yet reported, and all of them as files if requested. */
final class DemoAlbum implements Consumer<Photograph> {
    private final Optional<Path> folder;
    private final List<Photograph> unreported = new ArrayList<>();
    private int taken;

    private DemoAlbum(Optional<Path> folder) {
        this.folder = folder;
    }

    /** Writes no files. */
    static DemoAlbum withoutFiles() {
        return new DemoAlbum(Optional.empty());
    }

    /** Writes files to a folder, which is created if missing; one that is not empty is refused. */
    static DemoAlbum in(Path folder) {
        try {
            Files.createDirectories(folder);
            try (DirectoryStream<Path> files = Files.newDirectoryStream(folder)) {
                if (files.iterator().hasNext()) {
                    throw new OperationFailed(folder + " is not empty. Name a new folder.");
                }
            }
        } catch (IOException e) {
            throw cannotWrite(folder);
        }
        return new DemoAlbum(Optional.of(folder));
    }

    @Override
    public void accept(Photograph photograph) {
        taken++;
        unreported.add(photograph);
        folder.ifPresent(place -> {
            Path file = place.resolve(fileName(taken));
            byte[] frame = FitsFile.of(photograph.rendered().frame());
            try {
                WholeFile.write(file, frame, place);
            } catch (IOException e) {
                throw new OperationFailed(NotWritten.why(file, frame.length).sentence(file));
            }
        });
    }

    /** Frames taken since the last call. */
    List<Photograph> newOnes() {
        List<Photograph> fresh = List.copyOf(unreported);
        unreported.clear();
        return fresh;
    }

    Optional<Path> folder() {
        return folder;
    }

    int taken() {
        return taken;
    }

    /** Counted from 1 in the order of exposure. */
    static String fileName(int number) {
        return String.format(Locale.ROOT, "frame-%02d.fits", number);
    }

    private static OperationFailed cannotWrite(Path folder) {
        return new OperationFailed(
                "frames cannot be kept in " + folder + ". Name a writable folder on a disk with free space.");
    }
}
