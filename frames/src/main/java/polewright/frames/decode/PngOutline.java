package polewright.frames.decode;

import java.nio.ByteBuffer;
import java.util.Optional;

/**
 * The build of a PNG picture, by its chunks (ISO/IEC 15948).
 *
 * @param exif where its Exif chunk's data begin, or −1
 * @param exifBytes their length
 * @param whole whether its last chunk is there
 */
record PngOutline(int exif, int exifBytes, boolean whole) {
    private static final int SIGNATURE = 8;
    /** Length, type and checksum. */
    private static final int AROUND = 12;

    private static final int IEND = 0x49454e44;
    private static final int EXIF = 0x65584966;

    static PngOutline of(byte[] content) {
        ByteBuffer bytes = ByteBuffer.wrap(content);
        Optional<int[]> exif = Optional.empty();
        long at = SIGNATURE;
        while (at + AROUND <= content.length) {
            int length = bytes.getInt((int) at);
            int type = bytes.getInt((int) at + 4);
            if (length < 0 || at + AROUND + length > content.length) {
                break;
            }
            if (type == EXIF) {
                exif = Optional.of(new int[] {(int) at + 8, length});
            }
            if (type == IEND) {
                return of(exif, true);
            }
            at += AROUND + length;
        }
        return of(exif, false);
    }

    private static PngOutline of(Optional<int[]> exif, boolean whole) {
        return exif.map(e -> new PngOutline(e[0], e[1], whole)).orElseGet(() -> new PngOutline(-1, 0, whole));
    }
}
