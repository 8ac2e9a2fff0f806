package polewright.image.decode;

import java.util.ArrayList;
import java.util.List;

/**
 * The axes of a FITS array (FITS standard 4.0, section 4.4.1.1): 0 to 999 of them, each with a length.
 *
 * @param lengths of each, the fastest first
 */
record FitsAxes(List<Long> lengths) {
    /** FITS standard 4.0, section 4.4.1.1. */
    static final int MOST = 999;

    FitsAxes {
        lengths = List.copyOf(lengths);
    }

    /**
     * The axes that a header names.
     *
     * @param keyword {@code NAXIS}, or {@code ZNAXIS} for an image in tiles
     * @param shortest length of an axis
     * @throws polewright.sky.InputRefused when their number or a length is missing or impossible
     */
    static FitsAxes of(FitsCounts counts, String keyword, long shortest) {
        long number = counts.required(keyword, 0, MOST);
        List<Long> lengths = new ArrayList<>();
        for (int axis = 1; axis <= number; axis++) {
            lengths.add(counts.required(keyword + axis, shortest, Long.MAX_VALUE));
        }
        return new FitsAxes(lengths);
    }

    int count() {
        return lengths.size();
    }

    /** Length of an axis, from 1; an axis that is not named has a length of 1. */
    long length(int axis) {
        return axis <= lengths.size() ? lengths.get(axis - 1) : 1;
    }

    /**
     * Values in the array.
     *
     * @throws ArithmeticException when they are more than can be counted
     */
    long values() {
        return lengths.isEmpty() ? 0 : lengths.stream().reduce(1L, Math::multiplyExact);
    }
}
