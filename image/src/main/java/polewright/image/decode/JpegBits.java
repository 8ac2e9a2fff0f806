package polewright.image.decode;

/**
 * The entropy-coded data of a JPEG scan, bit by bit, up to the next marker (ITU-T T.81, sections B.1.1.5 and F.2.2.5).
 */
final class JpegBits {
    private static final int LOOK = 16;

    private final byte[] content;
    private final int end;
    private int at;
    private long bits;
    private int held;

    JpegBits(byte[] content, int from, int end) {
        this.content = content;
        this.at = from;
        this.end = end;
    }

    /** The next symbol of a code; negative if no code begins here, or the data end first. */
    int symbol(JpegCode code) {
        fill();
        int looked = held >= LOOK
                ? (int) (bits >>> (held - LOOK))
                : (int) (bits << (LOOK - held)) | (1 << (LOOK - held)) - 1;
        int found = code.entry(looked & 0xffff);
        int length = JpegCode.length(found);
        if (found < 0 || length > held) {
            return -1;
        }
        held -= length;
        return JpegCode.symbol(found);
    }

    /** Skips bits; false if there are not enough. */
    boolean skip(int count) {
        fill();
        held -= count;
        return held >= 0;
    }

    /**
     * Ends an entropy-coded segment: the rest of its last byte must be padded with equal bits, and only fill bytes may
     * follow before the next marker.
     *
     * @return the marker, which is skipped; negative if the data continue, or end
     */
    int marker() {
        int left = held % Byte.SIZE;
        long mask = (1L << left) - 1;
        long filling = bits >>> (held - left) & mask;
        if (filling != 0 && filling != mask) {
            return -1;
        }
        for (int whole = held - left - Byte.SIZE; whole >= 0; whole -= Byte.SIZE) {
            long filled = bits >>> whole & 0xff;
            if (filled != 0 && filled != 0xff) {
                return -1;
            }
        }
        bits = 0;
        held = 0;
        while (at + 1 < end) {
            int marker = content[at + 1] & 0xff;
            if (content[at] == (byte) 0xff && marker != 0 && marker != 0xff) {
                at += 2;
                return marker;
            }
            if (content[at] != 0 && content[at] != (byte) 0xff) {
                return -1;
            }
            at++;
        }
        return -1;
    }

    /** The position after the last byte read. */
    int position() {
        return at;
    }

    private void fill() {
        while (held <= Integer.SIZE && at < end) {
            int value = content[at] & 0xff;
            if (value == 0xff) {
                // A stuffed zero follows a 0xFF byte of data; anything else is a marker.
                if (at + 1 >= end || content[at + 1] != 0) {
                    return;
                }
                at++;
            }
            at++;
            bits = bits << Byte.SIZE | value;
            held += Byte.SIZE;
        }
    }
}
