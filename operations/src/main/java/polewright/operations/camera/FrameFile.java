package polewright.operations.camera;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import polewright.image.decode.DecodeLimits;
import polewright.operations.OperationFailed;
import polewright.store.disk.WholeFile;

/** The contents of a frame's file. */
public final class FrameFile {
    private final Path file;
    private final byte[] content;

    private FrameFile(Path file, byte[] content) {
        this.file = file;
        this.content = content;
    }

    /** Reads a whole file; a failure is reported in one line. */
    public static FrameFile read(Path file) {
        try {
            if (Files.isDirectory(file)) {
                throw new OperationFailed(
                        file + " is a folder. Name the frame's file; a folder is for polewright watch.");
            }
            long size = Files.size(file);
            if (size > DecodeLimits.OF_A_FILE.mostFileBytes()) {
                throw new OperationFailed(
                        file + " is larger than any frame (" + size / 1_000_000 + " MB). Name a single frame.");
            }
            return new FrameFile(file, WholeFile.read(file));
        } catch (NoSuchFileException e) {
            throw new OperationFailed(file + " does not exist. Check the name and the folder.");
        } catch (IOException e) {
            throw new OperationFailed(file + " cannot be read. Check its permissions.");
        } catch (OutOfMemoryError e) {
            throw new OperationFailed(file + " does not fit in memory. Save it binned or cropped.");
        }
    }

    public Path file() {
        return file;
    }

    /** File name without the folder. */
    public String name() {
        return nameOf(file);
    }

    /** All of its bytes, not a copy. */
    public byte[] content() {
        return content;
    }

    static String nameOf(Path file) {
        Path last = file.getFileName();
        return last == null ? file.toString() : last.toString();
    }
}
