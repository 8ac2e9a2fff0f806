package polewright.frames.decode;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.logging.Level;
import java.util.logging.Logger;
import nom.tam.fits.FitsException;
import nom.tam.fits.Header;
import nom.tam.util.FitsInputStream;
import polewright.sky.InputRefused;

/**
 * One header with the data after it, of a FITS file in memory (FITS standard 4.0, sections 3 and 4.4.1).
 *
 * @param header its keywords
 * @param start where the header begins, bytes
 * @param dataStart where the data begin, bytes
 * @param dataBytes how many bytes of data the header promises, without the filling of the last block; not yet checked
 *     against the file
 */
record FitsUnit(Header header, int start, int dataStart, long dataBytes) {
    /** Held, so that the setting lasts. */
    private static final Logger LIBRARY_LOG = Logger.getLogger("nom.tam");

    static {
        // The library tells of odd headers on the terminal, where nobody at a telescope can do anything about them.
        // For the whole program: rehearsal writes with it too, and has as little to tell.
        LIBRARY_LOG.setLevel(Level.OFF);
    }

    private static final int BLOCK = 2880;
    // FITS standard 4.0, section 4.4.1.1.
    private static final int MOST_AXES = 999;
    private static final int CARD = 80;

    /** The keywords of a file come in a few blocks; without an end after this many it is something else. */
    private static final int LONGEST_HEADER = 4000 * BLOCK;

    /**
     * The unit that begins at {@code start}.
     *
     * @throws InputRefused if its header is cut short or is none
     */
    static FitsUnit at(byte[] content, int start) {
        int headerBytes = headerBytes(content, start);
        if (headerBytes < 0) {
            throw new InputRefused("its header is cut short", "wait until it is saved whole, or take the frame again");
        }
        int dataStart = Math.min(content.length, start + headerBytes);
        try (FitsInputStream in =
                new FitsInputStream(new ByteArrayInputStream(content, start, dataStart - start), BLOCK)) {
            Header header = new Header(in);
            return new FitsUnit(header, start, dataStart, dataBytes(header));
        } catch (IOException | FitsException e) {
            throw new InputRefused("its FITS header cannot be read", "take the frame again");
        }
    }

    /** Whether another unit may begin there. */
    static boolean mayStartAt(byte[] content, long start) {
        if (start + CARD > content.length) {
            return false;
        }
        String word = "XTENSION";
        for (int i = 0; i < word.length(); i++) {
            if (content[(int) start + i] != word.charAt(i)) {
                return false;
            }
        }
        return true;
    }

    /** First byte after the data, the last one's filling included. */
    long next() {
        return dataStart + (dataBytes + BLOCK - 1) / BLOCK * BLOCK;
    }

    /** Whether all that the header promises is there. */
    boolean isWhole(byte[] content) {
        return dataBytes <= content.length - dataStart;
    }

    /** A picture of at least two axes, stored plainly. */
    boolean isImage() {
        boolean image = start == 0
                || "IMAGE".equals(header.getStringValue("XTENSION", "").trim());
        return image
                && !header.getBooleanValue("GROUPS", false)
                && axes("NAXIS") >= 2
                && axis("NAXIS", 1) > 0
                && axis("NAXIS", 2) > 0;
    }

    /** A picture stored as a table of compressed tiles (FITS standard 4.0, section 10). */
    boolean isCompressedImage() {
        return header.getBooleanValue("ZIMAGE", false) && axes("ZNAXIS") >= 2;
    }

    /** The number of axes, by {@code NAXIS} or {@code ZNAXIS}. */
    int axes(String keyword) {
        return header.getIntValue(keyword, 0);
    }

    long axis(String keyword, int number) {
        return header.getLongValue(keyword + number, 1);
    }

    private static int headerBytes(byte[] content, int start) {
        int last = Math.min(content.length - start, LONGEST_HEADER);
        for (int card = 0; card + CARD <= last; card += CARD) {
            int at = start + card;
            if (content[at] == 'E' && content[at + 1] == 'N' && content[at + 2] == 'D' && isBlank(content, at + 3)) {
                return (card + CARD + BLOCK - 1) / BLOCK * BLOCK;
            }
        }
        return -1;
    }

    private static boolean isBlank(byte[] content, int at) {
        for (int i = at; i < at + 5; i++) {
            if (content[i] != ' ') {
                return false;
            }
        }
        return true;
    }

    private static long dataBytes(Header header) {
        int axes = header.getIntValue("NAXIS", 0);
        if (axes <= 0) {
            return 0;
        }
        if (axes > MOST_AXES) {
            return Long.MAX_VALUE / 2;
        }
        try {
            long values = 1;
            for (int i = 1; i <= axes; i++) {
                values = Math.multiplyExact(values, header.getLongValue("NAXIS" + i, 0));
            }
            values = Math.addExact(values, header.getLongValue("PCOUNT", 0));
            values = Math.multiplyExact(values, header.getLongValue("GCOUNT", 1));
            long bytes = Math.multiplyExact(values, (long) Math.abs(header.getIntValue("BITPIX", 8)) / 8);
            return bytes < 0 ? Long.MAX_VALUE / 2 : bytes;
        } catch (ArithmeticException e) {
            return Long.MAX_VALUE / 2;
        }
    }
}
