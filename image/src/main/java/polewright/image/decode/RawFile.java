package polewright.image.decode;

import com.drew.metadata.Directory;
import com.drew.metadata.exif.ExifDirectoryBase;
import java.io.IOException;
import java.util.Comparator;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import polewright.image.Frame;
import polewright.sky.InputRefused;

/**
 * A camera's raw file. Its largest embedded JPEG picture is used: cameras store one of full or nearly full size with
 * the detector's values, for their own screens.
 *
 * <p>The directories are read first. If they give no picture of a useful size (some makers keep theirs in maker notes,
 * or in files with another structure), the bytes are searched for one.
 */
final class RawFile {
    /** Smaller ones are thumbnails in which stars are lost. */
    static final int LEAST_SIDE = 640;

    private static final Comparator<Preview> BY_SIZE =
            Comparator.comparingLong(preview -> preview.outline().pixels());

    private static final int COLOUR_FILTER_ARRAY = 32_803;
    private static final int LINEAR_RAW = 34_892;
    /** Makers' own compressions of detector values. */
    private static final Set<Long> RAW_COMPRESSIONS = Set.of(32_767L, 32_769L, 32_770L, 34_713L, 65_535L);

    private static final int VERSION_MARK = 8;

    private RawFile() {}

    /** Whether a file that begins like a TIFF is a raw file, whose first picture may be a thumbnail. */
    static boolean isRaw(byte[] content, String name, TiffDirectories directories) {
        return FileKind.hasRawEnding(name)
                || (content.length > VERSION_MARK + 1
                        && content[VERSION_MARK] == 'C'
                        && content[VERSION_MARK + 1] == 'R')
                || directories.all().stream().anyMatch(RawFile::holdsDetectorValues);
    }

    static Frame decode(byte[] content, TiffDirectories directories, DecodeOptions options) throws IOException {
        Optional<Preview> preview = largest(content, directories, options.deadline());
        if (preview.isEmpty()) {
            throw new InputRefused(
                    "this raw file has no readable JPEG preview",
                    "let the camera save JPEG as well, or convert the file to TIFF or FITS");
        }
        JpegOutline outline = preview.get().outline();
        if (!preview.get().isUseful()) {
            throw new InputRefused(
                    "the largest preview in this raw file is only " + outline.width() + " by " + outline.height()
                            + " pixels",
                    "let the camera save JPEG as well, or convert the file to TIFF or FITS");
        }
        int start = preview.get().start();
        TiffDirectories facts = directories.all().isEmpty() && outline.exif() >= 0
                ? TiffDirectories.of(content, outline.exif())
                : directories;
        return PictureDecoder.jpeg(content, start, outline.end() - start, facts, options);
    }

    /** The largest complete picture. */
    static Optional<Preview> largest(byte[] content, TiffDirectories directories, DecodeDeadline deadline) {
        Optional<Preview> named = directories.embeddedJpegs().stream()
                .filter(jpeg -> jpeg.offset() >= 0 && jpeg.offset() < content.length)
                .flatMap(jpeg -> Preview.whole(content, (int) jpeg.offset()))
                .max(BY_SIZE);
        return named.filter(Preview::isUseful)
                .or(() -> searched(content, deadline))
                .or(() -> named);
    }

    private static Optional<Preview> searched(byte[] content, DecodeDeadline deadline) {
        Optional<Preview> largest = Optional.empty();
        for (int at = 0; at + 2 < content.length; at++) {
            if (content[at] != (byte) 0xff || content[at + 1] != (byte) 0xd8 || content[at + 2] != (byte) 0xff) {
                continue;
            }
            deadline.check();
            // This mark occurs a few times in a raw file by chance; following each to its end would take long.
            long best = largest.map(preview -> preview.outline().pixels()).orElse(0L);
            boolean larger = JpegOutline.size(content, at)
                    .filter(size -> size.isPicture() && size.pixels() > best)
                    .isPresent();
            if (larger) {
                Optional<Preview> whole = Preview.whole(content, at).findFirst();
                largest = whole.isPresent() ? whole : largest;
            }
        }
        return largest;
    }

    private static boolean holdsDetectorValues(Directory directory) {
        if (directory.containsTag(TiffDirectories.TAG_DNG_VERSION)) {
            return true;
        }
        long[] colours = TiffDirectories.numbers(directory, ExifDirectoryBase.TAG_PHOTOMETRIC_INTERPRETATION);
        long[] compression = TiffDirectories.numbers(directory, ExifDirectoryBase.TAG_COMPRESSION);
        return (colours.length == 1 && (colours[0] == COLOUR_FILTER_ARRAY || colours[0] == LINEAR_RAW))
                || (compression.length == 1 && RAW_COMPRESSIONS.contains(compression[0]));
    }

    /**
     * An embedded picture.
     *
     * @param start offset of its first byte in the file
     */
    record Preview(int start, JpegOutline outline) {
        static Stream<Preview> whole(byte[] content, int start) {
            return JpegOutline.whole(content, start).stream()
                    .filter(outline -> outline.isPicture() && outline.end() > 0)
                    .map(outline -> new Preview(start, outline));
        }

        boolean isUseful() {
            return Math.max(outline.width(), outline.height()) >= LEAST_SIDE;
        }
    }
}
