package polewright.image.decode;

import com.drew.imaging.tiff.TiffProcessingException;
import com.drew.imaging.tiff.TiffReader;
import com.drew.lang.ByteArrayReader;
import com.drew.lang.RandomAccessReader;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.StringValue;
import com.drew.metadata.exif.ExifDirectoryBase;
import com.drew.metadata.exif.ExifTiffHandler;
import com.drew.metadata.exif.GpsDirectory;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;

/**
 * The directories of a TIFF, of a raw file structured like one, or of an Exif block, as read by the metadata library.
 *
 * <p>Only the tags needed are read, and only a limited number of their bytes: a damaged length must not cost memory,
 * and profiles, maker notes and the like are more code that can fail.
 */
final class TiffDirectories {
    static final int TAG_DNG_VERSION = 0xc612;

    private static final Set<Integer> WANTED = Set.of(
            ExifDirectoryBase.TAG_NEW_SUBFILE_TYPE,
            ExifDirectoryBase.TAG_IMAGE_WIDTH,
            ExifDirectoryBase.TAG_IMAGE_HEIGHT,
            ExifDirectoryBase.TAG_COMPRESSION,
            ExifDirectoryBase.TAG_PHOTOMETRIC_INTERPRETATION,
            ExifDirectoryBase.TAG_STRIP_OFFSETS,
            ExifDirectoryBase.TAG_STRIP_BYTE_COUNTS,
            ExifDirectoryBase.TAG_TILE_WIDTH,
            ExifDirectoryBase.TAG_TILE_LENGTH,
            ExifDirectoryBase.TAG_TILE_OFFSETS,
            ExifDirectoryBase.TAG_TILE_BYTE_COUNTS,
            JpegTags.OFFSET,
            JpegTags.LENGTH,
            TAG_DNG_VERSION,
            ExifDirectoryBase.TAG_MODEL,
            ExifDirectoryBase.TAG_EXPOSURE_TIME,
            ExifDirectoryBase.TAG_DATETIME,
            ExifDirectoryBase.TAG_DATETIME_ORIGINAL,
            ExifDirectoryBase.TAG_DATETIME_DIGITIZED,
            ExifDirectoryBase.TAG_SUBSECOND_TIME,
            ExifDirectoryBase.TAG_SUBSECOND_TIME_ORIGINAL,
            ExifDirectoryBase.TAG_SUBSECOND_TIME_DIGITIZED,
            ExifDirectoryBase.TAG_TIME_ZONE,
            ExifDirectoryBase.TAG_TIME_ZONE_ORIGINAL,
            ExifDirectoryBase.TAG_TIME_ZONE_DIGITIZED,
            ExifDirectoryBase.TAG_FOCAL_LENGTH,
            ExifDirectoryBase.TAG_35MM_FILM_EQUIV_FOCAL_LENGTH,
            ExifDirectoryBase.TAG_FOCAL_PLANE_X_RESOLUTION,
            ExifDirectoryBase.TAG_FOCAL_PLANE_RESOLUTION_UNIT,
            ExifDirectoryBase.TAG_EXIF_IMAGE_WIDTH,
            GpsDirectory.TAG_TIME_STAMP,
            GpsDirectory.TAG_DATE_STAMP);

    private final List<Directory> directories;

    private TiffDirectories(Collection<Directory> directories) {
        this.directories = List.copyOf(directories);
    }

    /** Of an Exif block or a whole file; empty if it cannot be read at all. */
    static TiffDirectories of(byte[] content, int start) {
        Metadata metadata = new Metadata();
        Handler handler = new Handler(metadata);
        try {
            new TiffReader().processTiff(new ByteArrayReader(content, start), handler, 0);
        } catch (TiffProcessingException | IOException | RuntimeException e) {
            // Keep what has been read: a damaged tail seldom affects the beginning.
            handler.endingIFD();
        }
        List<Directory> read = new ArrayList<>();
        metadata.getDirectories().forEach(read::add);
        return new TiffDirectories(read);
    }

    /** Without directories. */
    static TiffDirectories none() {
        return new TiffDirectories(List.of());
    }

    List<Directory> all() {
        return directories;
    }

    /** Pictures that the directories list as JPEG. */
    List<JpegTags> embeddedJpegs() {
        List<JpegTags> found = new ArrayList<>();
        for (Directory directory : directories) {
            long[] offset = numbers(directory, JpegTags.OFFSET);
            long[] length = numbers(directory, JpegTags.LENGTH);
            if (offset.length == 1 && length.length == 1) {
                found.add(new JpegTags(offset[0], length[0]));
            }
            long[] strip = numbers(directory, ExifDirectoryBase.TAG_STRIP_OFFSETS);
            long[] bytes = numbers(directory, ExifDirectoryBase.TAG_STRIP_BYTE_COUNTS);
            if (strip.length == 1 && bytes.length == 1) {
                found.add(new JpegTags(strip[0], bytes[0]));
            }
        }
        return found;
    }

    /** The tag in the first directory that has it, as trimmed text. */
    Optional<String> text(int tag) {
        for (Directory directory : directories) {
            String text = directory.getString(tag);
            if (text != null && !text.isBlank()) {
                return Optional.of(text.strip());
            }
        }
        return Optional.empty();
    }

    /** The tag in the first directory in which it is a finite positive number. */
    OptionalDouble positive(int tag) {
        for (Directory directory : directories) {
            Double value = directory.getDoubleObject(tag);
            if (value != null && Double.isFinite(value) && value > 0) {
                return OptionalDouble.of(value);
            }
        }
        return OptionalDouble.empty();
    }

    /** Integers of a tag; an empty array if there are none. */
    static long[] numbers(Directory directory, int tag) {
        Object value = directory.getObject(tag);
        if (value instanceof Number number) {
            return new long[] {number.longValue()};
        }
        if (value instanceof long[] longs) {
            return longs;
        }
        int[] ints = value instanceof StringValue ? null : directory.getIntArray(tag);
        return ints == null ? new long[0] : Arrays.stream(ints).asLongStream().toArray();
    }

    /**
     * The location of a JPEG picture according to the file.
     *
     * @param offset first byte
     * @param length bytes
     */
    record JpegTags(long offset, long length) {
        static final int OFFSET = 0x0201;
        static final int LENGTH = 0x0202;
    }

    private static final class Handler extends ExifTiffHandler {
        private static final int MOST_DIRECTORIES = 100;
        private static final long MOST_BYTES_OF_A_TAG = 1 << 20;
        private static final long MOST_BYTES = 1 << 22;

        private final AtomicLong bytes = new AtomicLong();

        Handler(Metadata metadata) {
            super(metadata, null, 0);
        }

        @Override
        public boolean tryEnterSubIfd(int tagId) {
            return hasRoom() && super.tryEnterSubIfd(tagId);
        }

        @Override
        public boolean hasFollowerIfd() {
            return hasRoom() && super.hasFollowerIfd();
        }

        /** True for tags that are skipped. */
        @Override
        public boolean customProcessTag(
                int tagOffset,
                Set<Integer> processedIfdOffsets,
                int tiffHeaderOffset,
                RandomAccessReader reader,
                int tagId,
                int byteCount) {
            return !WANTED.contains(tagId)
                    || byteCount > MOST_BYTES_OF_A_TAG
                    || bytes.addAndGet(byteCount) > MOST_BYTES;
        }

        private boolean hasRoom() {
            return _metadata.getDirectoryCount() < MOST_DIRECTORIES;
        }
    }
}
