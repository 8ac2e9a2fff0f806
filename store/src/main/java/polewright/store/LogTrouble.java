package polewright.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import org.jspecify.annotations.Nullable;
import org.sqlite.NativeLibraryNotFoundException;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;
import polewright.sky.InputRefused;
import polewright.store.disk.FileSizeLimit;
import polewright.store.disk.NotWritten;

/** Failures of the log's file, in words for the person at the telescope. */
final class LogTrouble {
    // The library is 0.8 to 1.4 million bytes, depending on the processor.
    private static final long LIBRARY_BYTES = 1_500_000;
    // What one event can add to the file, including pages for the b-tree.
    private static final long GROWTH_BYTES = 64 * 1024;

    private LogTrouble() {}

    /** The refusal for this failure; the failure itself if it is a bug. */
    static RuntimeException of(Path file, RuntimeException failure) {
        return of(file, failure, failure);
    }

    static RuntimeException of(Path file, SQLException failure) {
        return of(file, failure, new IllegalStateException(failure));
    }

    private static RuntimeException of(Path file, Throwable failure, RuntimeException bug) {
        if (cause(failure, NativeLibraryNotFoundException.class) != null) {
            return noLibrary();
        }
        SQLiteException cause = sqlite(failure);
        return cause == null ? bug : of(file, cause, bug);
    }

    /** SQLite is a native library, unpacked into a folder and loaded from there. */
    private static InputRefused noLibrary() {
        Path folder = Path.of(System.getProperty("org.sqlite.tmpdir", System.getProperty("java.io.tmpdir", ".")));
        NotWritten why = NotWritten.seen(folder.resolve("sqlite"), LIBRARY_BYTES)
                .orElseGet(() -> new NotWritten(
                        "the system does not allow programs to be loaded from there (noexec)",
                        "give a folder where it does"));
        return InputRefused.forNow(
                "the library that reads the log cannot be unpacked in " + folder + ", so nothing was logged: "
                        + why.what(),
                why.remedy() + "; another folder can be named with JAVA_TOOL_OPTIONS=-Djava.io.tmpdir=FOLDER");
    }

    /** Whether SQLite failed with this code, or an extended code of it. */
    static boolean is(Throwable failure, SQLiteErrorCode code) {
        SQLiteException cause = sqlite(failure);
        return cause != null && primary(cause) == code;
    }

    /**
     * Nothing more may be added: on damaged pages it could be lost, or destroy more.
     *
     * @param what the damage
     */
    static InputRefused damaged(Path file, String what) {
        return InputRefused.forNow(
                file + " is damaged (" + what + "), so nothing was logged",
                "leave it as it is, rescue what can be read into a new file, and use another log tonight");
    }

    static InputRefused notALog(Path file) {
        return new InputRefused(file + " is not a Polewright log", "name another file; this one was not changed");
    }

    static InputRefused newer(Path file, int version, int known) {
        return new InputRefused(
                file + " was written by a newer Polewright (log version " + version + ", this one knows " + known + ")",
                "use the newer program, or name another file; this one was not changed");
    }

    static InputRefused cannotMakeFolder(Path folder) {
        return new InputRefused(
                "the folder " + folder + " for the log cannot be made",
                "name a file in a folder that you may write to");
    }

    private static RuntimeException of(Path file, SQLiteException cause, RuntimeException otherwise) {
        return switch (primary(cause)) {
            case SQLITE_NOTADB -> notALog(file);
            case SQLITE_FULL ->
                InputRefused.forNow(
                        "the disk with " + file + " is full, so this was not logged; what was there is safe",
                        "free some space and enter it again");
            case SQLITE_READONLY, SQLITE_PERM, SQLITE_AUTH ->
                InputRefused.forNow(
                        file + " is not writable, so nothing was logged",
                        "allow writing to it and to its folder, or name another file");
            case SQLITE_CANTOPEN ->
                InputRefused.forNow(
                        file + " cannot be opened as a log", "name a file in a folder that you may write to");
            case SQLITE_BUSY, SQLITE_LOCKED ->
                InputRefused.forNow(
                        "another program has locked " + file + " for too long, so nothing was logged",
                        "close it and enter this again");
            case SQLITE_IOERR -> notWritten(file);
            case SQLITE_CORRUPT -> damaged(file, "its pages are inconsistent");
            default -> otherwise;
        };
    }

    private static @Nullable SQLiteException sqlite(Throwable failure) {
        return cause(failure, SQLiteException.class);
    }

    private static <T extends Throwable> @Nullable T cause(Throwable failure, Class<T> kind) {
        for (Throwable t = failure; t != null; t = t.getCause()) {
            if (kind.isInstance(t)) {
                return kind.cast(t);
            }
        }
        return null;
    }

    /** SQLite cannot distinguish a file at this session's size limit from a broken disk. */
    private static InputRefused notWritten(Path file) {
        long bytes = bytes(file) + GROWTH_BYTES;
        if (bytes > FileSizeLimit.bytes()) {
            NotWritten why = NotWritten.tooLarge(bytes);
            return InputRefused.forNow(
                    file + " cannot grow, so this was not logged; what was there is safe: " + why.what(), why.remedy());
        }
        return InputRefused.forNow(
                "the disk with " + file + " failed, so this was not logged",
                "check the disk or card, copy the log to another, and enter it again there");
    }

    private static long bytes(Path file) {
        try {
            return Files.size(file);
        } catch (IOException unreadable) {
            return 0;
        }
    }

    // The low byte of an extended code is its primary code.
    private static SQLiteErrorCode primary(SQLiteException cause) {
        return SQLiteErrorCode.getErrorCode(cause.getResultCode().code & 0xff);
    }
}
