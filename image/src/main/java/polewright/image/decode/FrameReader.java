package polewright.image.decode;

import java.io.IOException;
import polewright.image.Frame;
import polewright.sky.InputRefused;

/**
 * Decodes the bytes of a file to a greyscale frame.
 *
 * <p>FITS, JPEG, PNG, TIFF, each optionally gzipped, and the picture embedded in a camera's raw file; distinguished by
 * their first bytes, not by name. Whatever is wrong with the bytes, the result is a frame or a one-line message for the
 * user.
 */
public final class FrameReader {
    private FrameReader() {}

    /**
     * Decodes a frame.
     *
     * @param content all bytes of the file; not changed
     * @param name of the file, for messages; its extension matters only for a raw file that its bytes do not identify
     * @throws InputRefused if there is no frame in it; the message begins with the name
     */
    public static Frame read(byte[] content, String name, DecodeOptions options) {
        try {
            return decode(content, name, options);
        } catch (InputRefused e) {
            throw e.at(name);
        } catch (IOException | RuntimeException | StackOverflowError e) {
            // Anything a library may throw on damaged bytes.
            throw because(
                    e,
                    new InputRefused(
                            name + ": it is damaged, and the picture in it cannot be decoded",
                            "copy it again from the camera, or take another frame"));
        } catch (OutOfMemoryError e) {
            // Sizes are checked before memory is allocated; this remains if the program is nearly out of memory
            // already.
            throw because(
                    e,
                    new InputRefused(
                            name + ": there is not enough memory to decode it",
                            "save it binned or cropped, or give Java more memory with -Xmx"));
        }
    }

    /** The cause is not shown to the user, but it helps in debugging. */
    private static InputRefused because(Throwable cause, InputRefused refused) {
        refused.initCause(cause);
        return refused;
    }

    private static Frame decode(byte[] content, String name, DecodeOptions options) throws IOException {
        return switch (FileKind.of(content, name)) {
            case FITS -> FitsDecoder.decode(content, options);
            case JPEG -> PictureDecoder.jpeg(content, options);
            case PNG -> PictureDecoder.png(content, options);
            case TIFF -> tiff(content, name, options);
            case RAW_LIKE_TIFF -> RawFile.decode(content, TiffDirectories.of(content, 0), options);
            case RAW_OF_OTHER_BUILD -> RawFile.decode(content, TiffDirectories.none(), options);
            case EMPTY ->
                throw new InputRefused("the file is empty", "wait until it is saved, or take the frame again");
            case GZIP -> gzipped(content, name, options);
            case BIG_TIFF ->
                throw new InputRefused("it is a BigTIFF, which is not supported", "save it as plain TIFF or FITS");
            case HEIF ->
                throw new InputRefused("it is a HEIF picture, which is not supported", "save it as JPEG, TIFF or FITS");
            case UNKNOWN ->
                throw new InputRefused(
                        "this is not a supported image",
                        "give FITS, TIFF, PNG, JPEG, or a raw file with a full-size preview");
        };
    }

    private static Frame gzipped(byte[] content, String name, DecodeOptions options) throws IOException {
        byte[] decompressed = GzippedFile.decompressed(content, options);
        String inside = GzippedFile.nameInside(name);
        if (FileKind.of(decompressed, inside) == FileKind.GZIP) {
            throw new InputRefused("it is packed by gzip twice", "unpack it first");
        }
        return decode(decompressed, inside, options);
    }

    private static Frame tiff(byte[] content, String name, DecodeOptions options) throws IOException {
        TiffDirectories directories = TiffDirectories.of(content, 0);
        if (RawFile.isRaw(content, name, directories)) {
            return RawFile.decode(content, directories, options);
        }
        if (!TiffOutline.hasPicture(directories) || TiffOutline.reachesBeyond(content, directories)) {
            throw new InputRefused("this TIFF is incomplete", "wait until it is fully saved, or copy it again");
        }
        if (TiffOutline.hasHugeTiles(directories)) {
            throw new IOException("tiles larger than the picture");
        }
        return PictureDecoder.tiff(content, directories, options);
    }
}
