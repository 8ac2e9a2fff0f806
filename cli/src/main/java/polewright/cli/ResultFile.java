package polewright.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import polewright.operations.OperationFailed;
import polewright.store.disk.NotWritten;

/** A file that a command makes because it was asked to. */
final class ResultFile {
    private ResultFile() {}

    /** Writes a file, over another of that name. */
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

    /** Writes a file that is not there yet, whole or not at all: half of one would be in the way of the next try. */
    static void writeNew(Path file, String text) {
        byte[] content = text.getBytes(StandardCharsets.UTF_8);
        try {
            // Made first, so that of two that write the same file one is refused.
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
            // The disk that did not take the file does not let it go either; the refusal says what is wrong with it.
        }
    }

    private static OperationFailed notWritten(Path file, int bytes) {
        return new OperationFailed(NotWritten.why(file, bytes).sentence(file));
    }
}
