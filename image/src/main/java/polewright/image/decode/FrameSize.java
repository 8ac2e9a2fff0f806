package polewright.image.decode;

import polewright.sky.InputRefused;

/** The size claimed by a file, checked before memory is allocated. */
final class FrameSize {
    private static final double MEGABYTE = 1e6;
    /** The highest compression ratios, of an all-black picture, are 1000 (deflate) or 1400 (LZW). */
    private static final double TIGHTEST_PACKING = 2000;

    private FrameSize() {}

    /**
     * @param storedBytesPerPixel memory used by the library per pixel during decoding
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

    /** Throws if this many bytes cannot hold this many pixels at any compression ratio. */
    static void checkHolds(long fileBytes, long width, long height, int storedBytesPerPixel) {
        if ((double) width * height * storedBytesPerPixel > fileBytes * TIGHTEST_PACKING) {
            throw new InputRefused(
                    "it says it has " + width + " by " + height + " pixels, and has only " + fileBytes + " bytes",
                    "copy it again from the camera, or take another frame");
        }
    }
}
