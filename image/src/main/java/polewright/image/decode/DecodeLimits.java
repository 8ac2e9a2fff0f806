package polewright.image.decode;

import java.time.Duration;

/**
 * Resource limits for reading one frame. These are the only ones: files, uploads and the decoder all use them.
 *
 * @param mostPixels larger frames are refused before memory is allocated
 * @param mostFileBytes larger files are not read, and compressed data are not expanded beyond this
 * @param shareOfMemory fraction of Java's memory that the pixels may use during decoding, 0 to 1
 * @param longest time to decode it
 */
public record DecodeLimits(long mostPixels, long mostFileBytes, double shareOfMemory, Duration longest) {
    /**
     * A file on the user's own machine. The largest single detectors sold for astronomy have about 150 million pixels.
     */
    public static final DecodeLimits OF_A_FILE =
            new DecodeLimits(200_000_000, 1_500_000_000, 0.9, Duration.ofMinutes(2));

    /** A frame uploaded from a page to a server that has other work to do. */
    public static final DecodeLimits OF_AN_UPLOAD =
            new DecodeLimits(64_000_000, 64L << 20, 0.5, Duration.ofSeconds(30));

    public DecodeLimits withMostPixels(long limit) {
        return new DecodeLimits(limit, mostFileBytes, shareOfMemory, longest);
    }

    /** Bytes of memory that pixels may use. */
    double mostMemoryBytes() {
        return Runtime.getRuntime().maxMemory() * shareOfMemory;
    }
}
