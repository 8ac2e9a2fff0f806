package polewright.image.decode;

import java.nio.charset.StandardCharsets;

/**
 * Whether the first row stored is at the top or the bottom of the displayed picture.
 *
 * <p>FITS displays it at the bottom (FITS Standard 4.0, 2018, section 5.1: only a recommendation), every other kind of
 * picture at the top. Some capture programs store FITS from the top down and declare it by {@code ROWORDER} (common
 * practice).
 */
public enum RowOrder {
    TOP_DOWN,
    BOTTOM_UP;

    private static final int CARD = 80;
    private static final int MOST_CARDS = 36 * 100;

    /**
     * From the first bytes of a file.
     *
     * @param content all of it; not changed
     */
    public static RowOrder of(byte[] content, String name) {
        FileKind kind = FileKind.of(content, name);
        return kind == FileKind.GZIP
                ? ofHeader(GzippedFile.beginning(content, MOST_CARDS * CARD), GzippedFile.nameInside(name))
                : ofHeader(content, name);
    }

    private static RowOrder ofHeader(byte[] content, String name) {
        if (FileKind.of(content, name) != FileKind.FITS) {
            return TOP_DOWN;
        }
        for (int card = 0; card < MOST_CARDS && (card + 1) * CARD <= content.length; card++) {
            String text = new String(content, card * CARD, CARD, StandardCharsets.ISO_8859_1);
            if (text.startsWith("END ")) {
                break;
            }
            if (text.startsWith("ROWORDER=")) {
                return text.contains("TOP-DOWN") ? TOP_DOWN : BOTTOM_UP;
            }
        }
        return BOTTOM_UP;
    }

    /**
     * Whether the parity of a picture displayed with its first row at the top must be reversed for this one, or back:
     * flipping top and bottom mirrors a picture.
     */
    public boolean flips(boolean mirrored) {
        return mirrored != (this == BOTTOM_UP);
    }
}
