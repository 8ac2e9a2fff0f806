package polewright.image.decode;

import polewright.sky.InputRefused;

/** The size that a file claims, checked before memory is taken for it. */
final class FrameSize {
    private static final double MEGABYTE = 1e6;
    /** The tightest packings, of an all-black picture, come to 1000 (deflate) or 1400 (LZW). */
    private static final double TIGHTEST_PACKING = 2000;

    private FrameSize() {}

    /**
     * @param storedBytesPerPixel taken by the library for a pixel while the file is being decoded
     * @throws InputRefused if the frame is empty, larger than the options allow, or larger than memory
     */
    static void check(long width, long height, int storedBytesPerPixel, DecodeOptions options) {
        if (width < 1 || height < 1) {
            throw new InputRefused("its size is " + width + " by " + height + " pixels", "take another frame");
        }
        long mostPixels = options.limits().mostPixels();
        if (width > mostPixels || height > mostPixels || width * height > mostPixels) {
            throw new InputRefused(
                    "it says it has " + width + " by " + height + " pixels, more than the limit of "
                            + mostPixels / 1_000_000 + " million",
                    "if that is right, save it binned or cropped; if not, the file is damaged");
        }
        double needed = (double) width * height * (storedBytesPerPixel + Float.BYTES);
        double most = options.limits().mostMemoryBytes();
        if (needed > most) {
            throw new InputRefused(
                    "its " + width + " by " + height + " pixels need " + Math.round(needed / MEGABYTE)
                            + " MB of memory, but only " + Math.round(most / MEGABYTE) + " MB are available",
                    "save it binned or cropped, or give Java more memory with -Xmx");
        }
    }

    /** Throws if so few bytes cannot hold so many pixels, however tightly they are packed. */
    static void checkHolds(long fileBytes, long width, long height, int storedBytesPerPixel) {
        if ((double) width * height * storedBytesPerPixel > fileBytes * TIGHTEST_PACKING) {
            throw new InputRefused(
                    "it says it has " + width + " by " + height + " pixels, and has only " + fileBytes + " bytes",
                    "copy it again from the camera, or take another frame");
        }
    }
}
