package polewright.image.decode;

import polewright.sky.InputRefused;

/**
 * Whether a file that a capture program is writing is there from beginning to end; cheap, nothing is decoded.
 *
 * <p>A file whose length was set before its pixels were written looks whole: no format tells.
 */
public sealed interface FrameCompleteness {
    /** All that the file promises is there. */
    record Whole() implements FrameCompleteness {}

    /** More is to come, or will never. */
    record CutShort() implements FrameCompleteness {}

    /** Not a kind of file that {@link FrameReader} reads. */
    record NotAFrame() implements FrameCompleteness {}

    /**
     * Looks at the build of a file.
     *
     * @param name of the file; its ending only tells a raw file whose bytes do not
     * @throws InputRefused when the deadline is past
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

    /** What is packed ends where the packing does. */
    private static FrameCompleteness ofGzipped(byte[] content, String name, DecodeDeadline deadline) {
        FileKind inside =
                FileKind.of(GzippedFile.beginning(content, FileKind.TELLING_BYTES), GzippedFile.nameInside(name));
        return switch (inside) {
            case GZIP, BIG_TIFF, HEIF, UNKNOWN -> new NotAFrame();
            // What is damaged will not be whole later: the reader says why.
            default -> wholeIf(GzippedFile.isWhole(content, deadline).orElse(true));
        };
    }

    private static FrameCompleteness wholeIf(boolean whole) {
        return whole ? new Whole() : new CutShort();
    }

    /** All units are whole, and one of them is an image: often an empty unit is saved first and the image after it. */
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
                // A header with its end that makes no sense: more bytes would change nothing, and the reader says why.
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
