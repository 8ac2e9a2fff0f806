package polewright.image.decode;

import java.math.BigInteger;
import nom.tam.fits.Header;
import nom.tam.fits.HeaderCard;
import polewright.sky.InputRefused;

/**
 * Whole numbers of a FITS header, each held against its limits before anything is counted, skipped or allocated by it: the
 * library takes every number as it is.
 *
 * @param header where they are
 */
record FitsCounts(Header header) {
    /** A number that the standard demands. */
    long required(String keyword, long least, long most) {
        if (!header.containsKey(keyword)) {
            throw new InputRefused("its header has no " + keyword, "copy it again, or take another frame");
        }
        return orElse(keyword, least, least, most);
    }

    /**
     * A number that may be missing.
     *
     * @param usual its value then
     * @throws InputRefused when it is outside the limits
     */
    long orElse(String keyword, long usual, long least, long most) {
        HeaderCard card = header.getCard(keyword);
        BigInteger other = BigInteger.valueOf(usual);
        BigInteger value = card == null ? other : card.getValue(BigInteger.class, other);
        if (value.compareTo(BigInteger.valueOf(least)) < 0 || value.compareTo(BigInteger.valueOf(most)) > 0) {
            throw new InputRefused(
                    "its header says " + keyword + " = " + value + ", and " + limits(value, least, most),
                    "copy it again, or take another frame");
        }
        return value.longValueExact();
    }

    private static String limits(BigInteger value, long least, long most) {
        if (least == most) {
            return "only " + least + " is possible there";
        }
        if (most == Long.MAX_VALUE) {
            return value.signum() < 0 || value.bitLength() < Long.SIZE
                    ? "the least possible is " + least
                    : "the most possible is " + most;
        }
        return "the limits are " + least + " and " + most;
    }
}
