package polewright.image.decode;

import com.drew.metadata.Directory;
import com.drew.metadata.exif.ExifDirectoryBase;

/** Whether the parts given in a TIFF's directories lie within the file (TIFF 6.0, sections 2 and 15). */
final class TiffOutline {
    /** Some raw files write this if they have no such part. */
    private static final long NOWHERE = 0xffff_ffffL;

    /** Pixels; writers seldom make tiles larger than 512 by 512. */
    private static final double LARGEST_TILE = 1 << 22;

    private TiffOutline() {}

    /** Writers fill in the offset of the first directory last: until then there is no picture. */
    static boolean hasPicture(TiffDirectories directories) {
        return directories.all().stream().anyMatch(d -> d.containsTag(ExifDirectoryBase.TAG_IMAGE_WIDTH));
    }

    /**
     * Tiles far larger than the picture, for which the library would allocate memory before it looks for their bytes.
     */
    static boolean hasHugeTiles(TiffDirectories directories) {
        return directories.all().stream().anyMatch(d -> {
            double picture =
                    number(d, ExifDirectoryBase.TAG_IMAGE_WIDTH) * number(d, ExifDirectoryBase.TAG_IMAGE_HEIGHT);
            double tile = number(d, ExifDirectoryBase.TAG_TILE_WIDTH) * number(d, ExifDirectoryBase.TAG_TILE_LENGTH);
            return tile > LARGEST_TILE && tile > 2 * picture;
        });
    }

    static boolean reachesBeyond(byte[] content, TiffDirectories directories) {
        return directories.all().stream()
                .anyMatch(d -> reachesBeyond(
                                content,
                                d,
                                ExifDirectoryBase.TAG_STRIP_OFFSETS,
                                ExifDirectoryBase.TAG_STRIP_BYTE_COUNTS)
                        || reachesBeyond(
                                content,
                                d,
                                ExifDirectoryBase.TAG_TILE_OFFSETS,
                                ExifDirectoryBase.TAG_TILE_BYTE_COUNTS));
    }

    private static boolean reachesBeyond(byte[] content, Directory directory, int offsetsTag, int countsTag) {
        long[] offsets = TiffDirectories.numbers(directory, offsetsTag);
        long[] counts = TiffDirectories.numbers(directory, countsTag);
        for (int i = 0; i < offsets.length; i++) {
            // Numbers of 32 bits may arrive signed.
            long offset = offsets[i] & NOWHERE;
            long count = i < counts.length ? counts[i] & NOWHERE : 0;
            if (offset != NOWHERE && offset + count > content.length) {
                return true;
            }
        }
        return false;
    }

    private static double number(Directory directory, int tag) {
        long[] numbers = TiffDirectories.numbers(directory, tag);
        return numbers.length == 1 ? numbers[0] & NOWHERE : 0;
    }
}
