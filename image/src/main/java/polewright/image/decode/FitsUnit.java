package polewright.image.decode;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.logging.Level;
import java.util.logging.Logger;
import nom.tam.fits.FitsException;
import nom.tam.fits.Header;
import nom.tam.util.FitsInputStream;
import polewright.sky.InputRefused;

/**
 * One header and data unit (HDU) of a FITS file in memory (FITS standard 4.0, sections 3 and 4.4.1).
 *
 * @param header its keywords
 * @param axes of its data
 * @param start offset of the header, bytes
 * @param dataStart offset of the data, bytes
 * @param dataBytes length of the data according to the header, without the padding of the last block; not yet checked
 *     against the file
 */
record FitsUnit(Header header, FitsAxes axes, int start, int dataStart, long dataBytes) {
    /** Keeps a strong reference, so that the setting lasts. */
    private static final Logger LIBRARY_LOG = Logger.getLogger("nom.tam");

    static {
        // The library logs odd headers to the terminal, where an observer can do nothing about them. Disabled for the
        // whole program: rehearsal also writes with it and needs no log either.
        LIBRARY_LOG.setLevel(Level.OFF);
    }

    private static final int BLOCK = 2880;
    private static final int CARD = 80;
    private static final int MOST_BITS = 64;
    private static final long MORE_THAN_ANY_FILE = Long.MAX_VALUE / 2;

    /** Headers take a few blocks; without an END after this many it is not a header. */
    private static final int LONGEST_HEADER = 4000 * BLOCK;

    /**
     * The unit that begins at {@code start}.
     *
     * @throws InputRefused if its header is incomplete or invalid, or contains an impossible number
     */
    static FitsUnit at(byte[] content, int start) {
        int headerBytes = headerBytes(content, start);
        if (headerBytes < 0) {
            throw new InputRefused("its header is incomplete", "wait until it is fully saved, or take the frame again");
        }
        int dataStart = Math.min(content.length, start + headerBytes);
        try (FitsInputStream in =
                new FitsInputStream(new ByteArrayInputStream(content, start, dataStart - start), BLOCK)) {
            Header header = new Header(in);
            FitsAxes axes = FitsAxes.of(new FitsCounts(header), "NAXIS", 0);
            return new FitsUnit(header, axes, start, dataStart, dataBytes(header, axes));
        } catch (IOException | FitsException e) {
            throw new InputRefused("its FITS header cannot be read", "take the frame again");
        }
    }

    /** Whether the whole header that begins there is in the file. */
    static boolean hasHeader(byte[] content, int start) {
        return headerBytes(content, start) >= 0;
    }

    /** Whether another unit can begin there. */
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

    /** Offset after the data, including the padding of the last block. */
    long next() {
        return dataStart + (dataBytes + BLOCK - 1) / BLOCK * BLOCK;
    }

    /** Whether all data claimed by the header are present. */
    boolean isWhole(byte[] content) {
        return dataBytes <= content.length - dataStart;
    }

    /** An uncompressed image with at least two axes. */
    boolean isImage() {
        boolean image = start == 0
                || "IMAGE".equals(header.getStringValue("XTENSION", "").trim());
        return image
                && !header.getBooleanValue("GROUPS", false)
                && axes.count() >= 2
                && axes.length(1) > 0
                && axes.length(2) > 0;
    }

    /** A tile-compressed image (FITS standard 4.0, section 10). */
    boolean isCompressedImage() {
        return header.getBooleanValue("ZIMAGE", false) && counts().orElse("ZNAXIS", 0, 0, FitsAxes.MOST) >= 2;
    }

    FitsCounts counts() {
        return new FitsCounts(header);
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

    private static long dataBytes(Header header, FitsAxes axes) {
        FitsCounts counts = new FitsCounts(header);
        long bits = Math.abs(counts.orElse("BITPIX", 8, -MOST_BITS, MOST_BITS));
        long groups = counts.orElse("GCOUNT", 1, 1, Long.MAX_VALUE);
        long parameters = counts.orElse("PCOUNT", 0, 0, Long.MAX_VALUE);
        if (axes.count() == 0) {
            return 0;
        }
        try {
            long values = Math.multiplyExact(Math.addExact(axes.values(), parameters), groups);
            return Math.min(MORE_THAN_ANY_FILE, Math.multiplyExact(values, bits / 8));
        } catch (ArithmeticException e) {
            return MORE_THAN_ANY_FILE;
        }
    }
}
