package polewright.image.decode;

import java.time.Duration;

/**
 * What reading one frame may cost. These are the only limits: files, uploads and the decoder all go by them.
 *
 * @param mostPixels frames of more are refused before memory is taken for them
 * @param mostFileBytes larger files are not read, and what is packed is unpacked no further
 * @param shareOfMemory how much of Java's memory its pixels may take while it is decoded, 0 to 1
 * @param longest time to decode it
 */
public record DecodeLimits(long mostPixels, long mostFileBytes, double shareOfMemory, Duration longest) {
    /** A file of one's own. The largest single detectors sold for the sky have about 150 million pixels. */
    public static final DecodeLimits OF_A_FILE =
            new DecodeLimits(200_000_000, 1_500_000_000, 0.9, Duration.ofMinutes(2));

    /** A frame sent from a page, to a server that has other things to do. */
    public static final DecodeLimits OF_AN_UPLOAD =
            new DecodeLimits(64_000_000, 64L << 20, 0.5, Duration.ofSeconds(30));

    public DecodeLimits withMostPixels(long limit) {
        return new DecodeLimits(limit, mostFileBytes, shareOfMemory, longest);
    }

    /** Bytes of memory that pixels may take. */
    double mostMemoryBytes() {
        return Runtime.getRuntime().maxMemory() * shareOfMemory;
    }
}
