package polewright.store.disk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The largest file this process may write, as set by {@code ulimit -f}. Known on Linux only. */
public final class FileSizeLimit {
    private static final Path LIMITS = Path.of("/proc/self/limits");
    private static final Pattern LINE = Pattern.compile("Max file size\\s+(\\d+)\\s.*");

    private FileSizeLimit() {}

    /** {@link Long#MAX_VALUE} if there is no limit, or none is known. */
    public static long bytes() {
        try {
            return Files.readAllLines(LIMITS).stream()
                    .map(LINE::matcher)
                    .filter(Matcher::matches)
                    .map(line -> Long.parseLong(line.group(1)))
                    .findFirst()
                    .orElse(Long.MAX_VALUE);
        } catch (IOException | NumberFormatException notLinux) {
            return Long.MAX_VALUE;
        }
    }
}
