package polewright.image.decode;

import java.math.BigInteger;
import nom.tam.fits.Header;
import nom.tam.fits.HeaderCard;
import polewright.sky.InputRefused;

/**
 * Integers in a FITS header, each checked against its limits before it is used to count, skip or allocate: the library
 * accepts any value.
 *
 * @param header where they are
 */
record FitsCounts(Header header) {
    /** An integer that the standard requires. */
    long required(String keyword, long least, long most) {
        if (!header.containsKey(keyword)) {
            throw new InputRefused("its header has no " + keyword, "copy it again, or take another frame");
        }
        return orElse(keyword, least, least, most);
    }

    /**
     * An optional integer.
     *
     * @param usual its default
     * @throws InputRefused if it is outside the limits
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
