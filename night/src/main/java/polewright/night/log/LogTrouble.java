package polewright.night.log;

import java.nio.file.Path;
import java.sql.SQLException;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;
import polewright.sky.InputRefused;

/** What can go wrong with the file, in words for the person at the telescope. */
final class LogTrouble {
    private LogTrouble() {}

    /** The refusal that stands for this failure; the failure itself, when it is a bug. */
    static RuntimeException of(Path file, RuntimeException failure) {
        SQLiteException cause = sqlite(failure);
        return cause == null ? failure : of(file, cause, failure);
    }

    static RuntimeException of(Path file, SQLException failure) {
        SQLiteException cause = sqlite(failure);
        IllegalStateException bug = new IllegalStateException(failure);
        return cause == null ? bug : of(file, cause, bug);
    }

    static boolean isForeign(Throwable failure) {
        SQLiteException cause = sqlite(failure);
        return cause != null && primary(cause) == SQLiteErrorCode.SQLITE_NOTADB;
    }

    static InputRefused notALog(Path file) {
        return new InputRefused(
                file + " is not a Polewright log", "name another file; this one has been left as it was");
    }

    static InputRefused newer(Path file, int version, int known) {
        return new InputRefused(
                file + " was written by a newer Polewright (log version " + version + ", this one knows " + known + ")",
                "use the newer program, or name another file; this one has been left as it was");
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
                        file + " may not be written, so nothing was logged",
                        "allow writing to it and to its folder, or name another file");
            case SQLITE_CANTOPEN ->
                InputRefused.forNow(
                        file + " cannot be opened as a log", "name a file in a folder that you may write to");
            case SQLITE_BUSY, SQLITE_LOCKED ->
                InputRefused.forNow(
                        "another program has held " + file + " for too long, so nothing was logged",
                        "close it and enter this again");
            case SQLITE_IOERR ->
                InputRefused.forNow(
                        "the disk with " + file + " failed, so this was not logged",
                        "check the disk or card, copy the log to another, and enter it again there");
            case SQLITE_CORRUPT ->
                InputRefused.forNow(file + " is damaged", "keep a copy of it, and log to another file tonight");
            default -> otherwise;
        };
    }

    private static @Nullable SQLiteException sqlite(Throwable failure) {
        for (Throwable t = failure; t != null; t = t.getCause()) {
            if (t instanceof SQLiteException found) {
                return found;
            }
        }
        return null;
    }

    // The low byte of an extended code is the code it extends.
    private static SQLiteErrorCode primary(SQLiteException cause) {
        return SQLiteErrorCode.getErrorCode(cause.getResultCode().code & 0xff);
    }
}
