package polewright.image.decode;

import java.nio.ByteBuffer;
import java.util.zip.CRC32;

/**
 * The structure of a PNG picture from its chunks (ISO/IEC 15948).
 *
 * @param exif offset of the data of its Exif chunk, or −1
 * @param exifBytes their length
 * @param whole whether its last chunk is there
 * @param damaged whether a critical chunk has the wrong checksum
 */
record PngOutline(int exif, int exifBytes, boolean whole, boolean damaged) {
    private static final int SIGNATURE = 8;
    /** Length, type and checksum. */
    private static final int AROUND = 12;

    private static final int IEND = 0x49454e44;
    private static final int EXIF = 0x65584966;
    /** The bit of a chunk's type that marks it as ancillary (ISO/IEC 15948, section 5.4). */
    private static final int ANCILLARY = 0x20000000;

    static PngOutline of(byte[] content) {
        ByteBuffer bytes = ByteBuffer.wrap(content);
        PngOutline outline = new PngOutline(-1, 0, false, false);
        long at = SIGNATURE;
        while (at + AROUND <= content.length) {
            int start = (int) at;
            int length = bytes.getInt(start);
            int type = bytes.getInt(start + 4);
            if (length < 0 || at + AROUND + length > content.length) {
                break;
            }
            outline = outline.with(bytes, start, length, type);
            if (type == IEND) {
                return new PngOutline(outline.exif, outline.exifBytes, true, outline.damaged);
            }
            at += AROUND + length;
        }
        return outline;
    }

    private PngOutline with(ByteBuffer bytes, int start, int length, int type) {
        boolean isExif = type == EXIF;
        CRC32 checksum = new CRC32();
        if ((type & ANCILLARY) == 0) {
            checksum.update(bytes.slice(start + 4, length + 4));
        }
        boolean isSound = (type & ANCILLARY) != 0 || (int) checksum.getValue() == bytes.getInt(start + 8 + length);
        return new PngOutline(isExif ? start + 8 : exif, isExif ? length : exifBytes, whole, damaged || !isSound);
    }
}
