package polewright.app.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import polewright.app.JobFailed;

/** A file that a command makes because it was asked to. */
final class ResultFile {
    private ResultFile() {}

    static void write(Path file, byte[] content) {
        try {
            Files.write(file, content);
        } catch (IOException e) {
            throw new JobFailed(file + " cannot be written: name a file in a folder that you may write to.");
        }
    }
}
