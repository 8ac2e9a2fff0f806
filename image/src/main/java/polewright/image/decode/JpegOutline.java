package polewright.image.decode;

import java.util.Optional;

/**
 * The structure of a JPEG picture from its markers (ITU-T T.81, annex B).
 *
 * @param width columns
 * @param height rows
 * @param process low four bits of the frame marker: 0 to 2 are the kinds that picture programs read, 3 is the lossless
 *     kind in which raw files store detector values
 * @param scans number of scans
 * @param exif offset of the TIFF header in its Exif block, or −1
 * @param exifBytes length of that block
 * @param end offset after its last marker; −1 if it is truncated
 */
record JpegOutline(int width, int height, int process, int scans, int exif, int exifBytes, int end) {
    private static final int START_OF_IMAGE = 0xd8;
    private static final int END_OF_IMAGE = 0xd9;
    private static final int START_OF_SCAN = 0xda;
    private static final int APP1 = 0xe1;
    private static final int LAST_USUAL_PROCESS = 2;
    private static final String EXIF = "Exif\0\0";

    /** Reads to the end of the picture. Empty if there is no JPEG with a size at {@code start}. */
    static Optional<JpegOutline> whole(byte[] content, int start) {
        return read(content, start, true);
    }

    /** Reads as far as the picture's size; {@code end} is then −1. Empty if there is no JPEG with a size there. */
    static Optional<JpegOutline> size(byte[] content, int start) {
        return read(content, start, false);
    }

    boolean isPicture() {
        return process <= LAST_USUAL_PROCESS && width > 0 && height > 0;
    }

    /** Sequential with Huffman coding: nearly all that cameras write. */
    boolean isBaseline() {
        return process <= 1;
    }

    long pixels() {
        return (long) width * height;
    }

    private static Optional<JpegOutline> read(byte[] content, int start, boolean toTheEnd) {
        if (!isMarker(content, start, START_OF_IMAGE)) {
            return Optional.empty();
        }
        JpegOutline found = new JpegOutline(0, 0, Integer.MAX_VALUE, 0, -1, 0, -1);
        int at = start + 2;
        while (true) {
            at = nextMarker(content, at);
            if (at < 0) {
                return found.ifSized();
            }
            int marker = content[at + 1] & 0xff;
            if (marker == END_OF_IMAGE) {
                return found.endingAt(at + 2).ifSized();
            }
            if (at + 4 > content.length) {
                return found.ifSized();
            }
            int length = u16(content, at + 2);
            found = found.with(content, at, marker, length);
            if (marker == START_OF_SCAN && !toTheEnd) {
                return found.ifSized();
            }
            at += 2 + length;
        }
    }

    private JpegOutline with(byte[] content, int at, int marker, int length) {
        boolean frame = marker >= 0xc0 && marker <= 0xcf && marker != 0xc4 && marker != 0xc8 && marker != 0xcc;
        if (frame && at + 9 <= content.length) {
            return new JpegOutline(
                    u16(content, at + 7), u16(content, at + 5), marker & 0xf, scans, exif, exifBytes, end);
        }
        if (marker == START_OF_SCAN) {
            return new JpegOutline(width, height, process, scans + 1, exif, exifBytes, end);
        }
        int header = EXIF.length();
        if (marker == APP1 && exif < 0 && length > 2 + header && at + 2 + length <= content.length) {
            for (int i = 0; i < header; i++) {
                if (content[at + 4 + i] != EXIF.charAt(i)) {
                    return this;
                }
            }
            return new JpegOutline(width, height, process, scans, at + 4 + header, length - 2 - header, end);
        }
        return this;
    }

    private JpegOutline endingAt(int after) {
        return new JpegOutline(width, height, process, scans, exif, exifBytes, after);
    }

    private Optional<JpegOutline> ifSized() {
        return width > 0 && height > 0 ? Optional.of(this) : Optional.empty();
    }

    /** The next marker that is not part of a scan's own data (stuffed zeros, restarts). */
    private static int nextMarker(byte[] content, int from) {
        for (int at = from; at + 1 < content.length; at++) {
            if (content[at] == (byte) 0xff) {
                int marker = content[at + 1] & 0xff;
                boolean data = marker == 0 || marker == 0xff || marker == 1 || (marker >= 0xd0 && marker <= 0xd7);
                if (!data) {
                    return at;
                }
            }
        }
        return -1;
    }

    private static boolean isMarker(byte[] content, int at, int marker) {
        return at >= 0 && at + 1 < content.length && content[at] == (byte) 0xff && content[at + 1] == (byte) marker;
    }

    private static int u16(byte[] content, int at) {
        return (content[at] & 0xff) << 8 | (content[at + 1] & 0xff);
    }
}
