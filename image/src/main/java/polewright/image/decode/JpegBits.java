package polewright.image.decode;

/** The coded data of a JPEG scan, bit by bit, up to the next marker (ITU-T T.81, sections B.1.1.5 and F.2.2.5). */
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

    /** The next symbol of a code; negative if no such code begins here, or the data end before it does. */
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

    /** Passes over bits; false if they are not there. */
    boolean skip(int count) {
        fill();
        held -= count;
        return held >= 0;
    }

    /**
     * Ends a run of data: what is left of its last byte must be filled with equal bits, and only filling bytes may follow
     * before the next marker.
     *
     * @return the marker, which is passed over; negative if the data go on, or end
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

    /** Just after what was read. */
    int position() {
        return at;
    }

    private void fill() {
        while (held <= Integer.SIZE && at < end) {
            int value = content[at] & 0xff;
            if (value == 0xff) {
                // A stuffed zero follows a byte of data; anything else is a marker.
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
