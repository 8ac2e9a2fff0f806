package polewright.image.decode;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Set;

/** What a file is, by its first bytes; by its name only where those say nothing. */
enum FileKind {
    FITS,
    JPEG,
    PNG,
    /** TIFF, or a raw file of the same build: its directories tell which. */
    TIFF,
    /** TIFF's directories behind another first word: always a raw file. */
    RAW_LIKE_TIFF,
    /** A raw file of some other build. */
    RAW_OF_OTHER_BUILD,
    GZIP,
    BIG_TIFF,
    HEIF,
    EMPTY,
    UNKNOWN;

    /** So many first bytes tell the kind. */
    static final int TELLING_BYTES = 16;

    // Endings of raw files, as cameras write them (common practice).
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
