package polewright.operations;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Assumptions;

/** A RAM disk of a few pages, for tests that fill it or make it read-only. Only root can mount one. */
public final class SmallDisk implements AutoCloseable {
    private final Path folder;

    private SmallDisk(Path folder) {
        this.folder = folder;
    }

    /**
     * Mounts a disk; the test is skipped where mounting is not allowed.
     *
     * @param options such as {@code size=256k} or {@code noexec}
     */
    public static SmallDisk mounted(Path folder, String options) {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        Assumptions.assumeTrue(
                run("mount", "-t", "tmpfs", "-o", options, "tmpfs", folder.toString()),
                "a small disk can be mounted by root only");
        return new SmallDisk(folder);
    }

    /**
     * A read-only file in a writable folder. File permissions do not stop root, so the file is bind-mounted on itself.
     */
    public static SmallDisk readOnlyFile(Path file) {
        String name = file.toString();
        Assumptions.assumeTrue(run("mount", "--bind", name, name), "a file can be mounted by root only");
        SmallDisk mounted = new SmallDisk(file);
        if (!run("mount", "-o", "remount,bind,ro", name)) {
            mounted.close();
            throw new IllegalStateException(file + " cannot be made read-only");
        }
        return mounted;
    }

    /** Like a card with its write-protect switch set. */
    public void makeReadOnly() {
        if (!run("mount", "-o", "remount,ro", folder.toString())) {
            throw new IllegalStateException(folder + " cannot be made read-only");
        }
    }

    public Path folder() {
        return folder;
    }

    /** Fills it to the last block. */
    public void fill() {
        byte[] block = new byte[1024];
        Arrays.fill(block, (byte) 'x');
        try (var out = Files.newOutputStream(folder.resolve("in-the-way"))) {
            while (true) {
                out.write(block);
            }
        } catch (IOException full) {
            // The disk is full, as intended.
        }
    }

    /** The names of the files on it. */
    public List<String> names() {
        try (var files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() {
        if (!run("umount", folder.toString())) {
            throw new IllegalStateException(folder + " is still mounted");
        }
    }

    private static boolean run(String... words) {
        try {
            Process process = new ProcessBuilder(new ArrayList<>(List.of(words)))
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return process.waitFor() == 0;
        } catch (IOException absent) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}
