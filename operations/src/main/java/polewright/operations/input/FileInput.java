package polewright.operations.input;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import picocli.CommandLine.ITypeConverter;
import polewright.sky.InputRefused;

/** A file's name. */
public final class FileInput implements ITypeConverter<Path> {
    @Override
    public Path convert(String typed) {
        if (typed.isBlank()) {
            throw new InputRefused("the file's name is empty", "name a file");
        }
        try {
            return Path.of(typed);
        } catch (InvalidPathException e) {
            throw new InputRefused("'" + typed + "' cannot be used as a file name", "use plain letters and figures");
        }
    }
}
