package polewright.image.decode;

import java.util.ArrayList;
import java.util.List;

/**
 * The axes of a FITS array (FITS standard 4.0, section 4.4.1.1): 0 to 999 of them, each with a length.
 *
 * @param lengths of each, the fastest varying first
 */
record FitsAxes(List<Long> lengths) {
    /** FITS standard 4.0, section 4.4.1.1. */
    static final int MOST = 999;

    FitsAxes {
        lengths = List.copyOf(lengths);
    }

    /**
     * The axes given in a header.
     *
     * @param keyword {@code NAXIS}, or {@code ZNAXIS} for a tiled image
     * @param shortest length of an axis
     * @throws polewright.sky.InputRefused if their number or a length is missing or impossible
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

    /** Length of an axis, from 1; an axis that is not given has a length of 1. */
    long length(int axis) {
        return axis <= lengths.size() ? lengths.get(axis - 1) : 1;
    }

    /**
     * Number of values in the array.
     *
     * @throws ArithmeticException on overflow
     */
    long values() {
        return lengths.isEmpty() ? 0 : lengths.stream().reduce(1L, Math::multiplyExact);
    }
}
