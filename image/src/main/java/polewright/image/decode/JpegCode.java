package polewright.image.decode;

import java.util.Arrays;
import java.util.Optional;

/** A Huffman code of a JPEG picture (ITU-T T.81, annex C) as a lookup table for the next 16 bits. */
final class JpegCode {
    private static final int LONGEST = 16;
    private static final int SYMBOL_BITS = 8;

    private final int[] entries;

    private JpegCode(int[] entries) {
        this.entries = entries;
    }

    /**
     * The code described by a table.
     *
     * @param content holds 16 counts of codes, by length, then their symbols
     * @param at index of the first count
     * @return empty if the counts are not a valid code
     */
    static Optional<JpegCode> of(byte[] content, int at) {
        int[] entries = new int[1 << LONGEST];
        Arrays.fill(entries, -1);
        int code = 0;
        int symbol = at + LONGEST;
        for (int length = 1; length <= LONGEST; length++) {
            for (int i = 0; i < (content[at + length - 1] & 0xff); i++) {
                int first = code << (LONGEST - length);
                int after = first + (1 << (LONGEST - length));
                if (after > entries.length) {
                    return Optional.empty();
                }
                Arrays.fill(entries, first, after, (length << SYMBOL_BITS) | (content[symbol++] & 0xff));
                code++;
            }
            code <<= 1;
        }
        return Optional.of(new JpegCode(entries));
    }

    /** For the next 16 bits: a symbol with the length of its code; negative if no code begins here. */
    int entry(int bits) {
        return entries[bits];
    }

    static int length(int entry) {
        return entry >> SYMBOL_BITS;
    }

    static int symbol(int entry) {
        return entry & 0xff;
    }
}
