package polewright.image.decode;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Set;

/** The kind of a file from its first bytes; from its name only if they do not show it. */
enum FileKind {
    FITS,
    JPEG,
    PNG,
    /** TIFF, or a raw file with the same structure: its directories show which. */
    TIFF,
    /** TIFF directories with a different magic number: always a raw file. */
    RAW_LIKE_TIFF,
    /** A raw file with another structure. */
    RAW_OF_OTHER_BUILD,
    GZIP,
    BIG_TIFF,
    HEIF,
    EMPTY,
    UNKNOWN;

    /** The number of first bytes needed. */
    static final int MAGIC_BYTES = 16;

    // Extensions of raw files, as cameras write them (common practice).
    private static final Set<String> RAW_ENDINGS = Set.of(
            "3fr", "arw", "cr2", "cr3", "crw", "dcr", "dng", "erf", "fff", "iiq", "kdc", "mef", "mos", "mrw", "nef",
            "nrw", "orf", "pef", "raf", "raw", "rw2", "rwl", "sr2", "srf", "srw", "x3f");

    static FileKind of(byte[] content, String name) {
        if (content.length == 0) {
            return EMPTY;
        }
        if (startsWith(content, 0, "SIMPLE  =")) {
            return FITS;
        }
        if (startsWith(content, 0, "\u00ff\u00d8\u00ff")) {
            return JPEG;
        }
        if (startsWith(content, 0, "\u0089PNG\r\n\u001a\n")) {
            return PNG;
        }
        if (startsWith(content, 0, "II*\0") || startsWith(content, 0, "MM\0*")) {
            return TIFF;
        }
        if (startsWith(content, 0, "IIRO")
                || startsWith(content, 0, "IIRS")
                || startsWith(content, 0, "MMOR")
                || startsWith(content, 0, "IIU\0")) {
            return RAW_LIKE_TIFF;
        }
        if (startsWith(content, 0, "II+\0") || startsWith(content, 0, "MM\0+")) {
            return BIG_TIFF;
        }
        if (startsWith(content, 4, "ftypcrx ") || hasRawEnding(name)) {
            return RAW_OF_OTHER_BUILD;
        }
        if (startsWith(content, 4, "ftyp")) {
            return HEIF;
        }
        return startsWith(content, 0, "\u001f\u008b") ? GZIP : UNKNOWN;
    }

    static boolean hasRawEnding(String name) {
        String ending = name.substring(name.lastIndexOf('.') + 1);
        return RAW_ENDINGS.contains(ending.toLowerCase(Locale.ROOT));
    }

    private static boolean startsWith(byte[] content, int at, String magic) {
        byte[] wanted = magic.getBytes(StandardCharsets.ISO_8859_1);
        if (content.length < at + wanted.length) {
            return false;
        }
        for (int i = 0; i < wanted.length; i++) {
            if (content[at + i] != wanted[i]) {
                return false;
            }
        }
        return true;
    }
}
