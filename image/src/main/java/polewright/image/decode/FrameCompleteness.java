package polewright.image.decode;

import polewright.sky.InputRefused;

/**
 * Whether a file that a capture program is writing is complete. Cheap: nothing is decoded.
 *
 * <p>A file whose length was set before its pixels were written looks complete: no format shows this.
 */
public sealed interface FrameCompleteness {
    /** Everything that the file claims is present. */
    record Whole() implements FrameCompleteness {}

    /** Some of it is missing, temporarily or for good. */
    record CutShort() implements FrameCompleteness {}

    /** Not a kind of file that {@link FrameReader} reads. */
    record NotAFrame() implements FrameCompleteness {}

    /**
     * Checks the structure of a file.
     *
     * @param name of the file; its extension matters only for a raw file that its bytes do not identify
     * @throws InputRefused if the deadline has passed
     */
    static FrameCompleteness of(byte[] content, String name, DecodeDeadline deadline) {
        return switch (FileKind.of(content, name)) {
            case FITS -> wholeIf(isFitsWhole(content, deadline));
            case JPEG ->
                wholeIf(JpegOutline.whole(content, 0)
                        .filter(outline -> outline.end() > 0)
                        .isPresent());
            case PNG -> wholeIf(PngOutline.of(content).whole());
            case TIFF -> wholeIf(isTiffWhole(content, name, deadline));
            case RAW_LIKE_TIFF -> wholeIf(isRawWhole(content, TiffDirectories.of(content, 0), deadline));
            case RAW_OF_OTHER_BUILD -> wholeIf(isRawWhole(content, TiffDirectories.none(), deadline));
            case EMPTY -> new CutShort();
            case GZIP -> ofGzipped(content, name, deadline);
            case BIG_TIFF, HEIF, UNKNOWN -> new NotAFrame();
        };
    }

    /** Compressed data end at their own end marker. */
    private static FrameCompleteness ofGzipped(byte[] content, String name, DecodeDeadline deadline) {
        FileKind inside =
                FileKind.of(GzippedFile.beginning(content, FileKind.MAGIC_BYTES), GzippedFile.nameInside(name));
        return switch (inside) {
            case GZIP, BIG_TIFF, HEIF, UNKNOWN -> new NotAFrame();
            // A damaged file will not become complete: the reader reports why.
            default -> wholeIf(GzippedFile.isWhole(content, deadline).orElse(true));
        };
    }

    private static FrameCompleteness wholeIf(boolean whole) {
        return whole ? new Whole() : new CutShort();
    }

    /** All HDUs are complete, and one of them is an image: often an empty HDU is saved first and the image after it. */
    private static boolean isFitsWhole(byte[] content, DecodeDeadline deadline) {
        boolean image = false;
        long at = 0;
        do {
            deadline.check();
            if (!FitsUnit.hasHeader(content, (int) at)) {
                return false;
            }
            try {
                FitsUnit unit = FitsUnit.at(content, (int) at);
                if (!unit.isWhole(content)) {
                    return false;
                }
                image |= unit.isImage() || unit.isCompressedImage();
                at = unit.next();
            } catch (RuntimeException damaged) {
                // A complete but invalid header: more bytes would change nothing, and the reader reports why.
                return true;
            }
        } while (FitsUnit.mayStartAt(content, at));
        return image;
    }

    private static boolean isTiffWhole(byte[] content, String name, DecodeDeadline deadline) {
        TiffDirectories directories = TiffDirectories.of(content, 0);
        if (RawFile.isRaw(content, name, directories)) {
            return isRawWhole(content, directories, deadline);
        }
        return TiffOutline.hasPicture(directories) && !TiffOutline.reachesBeyond(content, directories);
    }

    private static boolean isRawWhole(byte[] content, TiffDirectories directories, DecodeDeadline deadline) {
        return !TiffOutline.reachesBeyond(content, directories)
                && RawFile.largest(content, directories, deadline).isPresent();
    }
}
