package polewright.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import polewright.operations.OperationFailed;
import polewright.store.disk.NotWritten;

/** An output file requested by the user. */
final class ResultFile {
    private ResultFile() {}

    /** Writes a file, replacing one with that name. */
    static void write(Path file, byte[] content) {
        boolean isNew = Files.notExists(file);
        try {
            Files.write(file, content);
        } catch (IOException e) {
            OperationFailed why = notWritten(file, content.length);
            if (isNew) {
                remove(file);
            }
            throw why;
        }
    }

    /** Writes a new file, completely or not at all: a partial one would block the next attempt. */
    static void writeNew(Path file, String text) {
        byte[] content = text.getBytes(StandardCharsets.UTF_8);
        try {
            // Created first, so that of two processes writing the same file one is refused.
            Files.createFile(file);
        } catch (FileAlreadyExistsException e) {
            throw new OperationFailed(file + " already exists. Name another file.");
        } catch (IOException e) {
            throw notWritten(file, content.length);
        }
        try {
            Files.write(file, content, StandardOpenOption.WRITE);
        } catch (IOException e) {
            OperationFailed why = notWritten(file, content.length);
            remove(file);
            throw why;
        }
    }

    private static void remove(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException stays) {
            // A disk that cannot store the file may also fail to delete it; the error message gives the cause.
        }
    }

    private static OperationFailed notWritten(Path file, int bytes) {
        return new OperationFailed(NotWritten.why(file, bytes).sentence(file));
    }
}
