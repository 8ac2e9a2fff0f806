package polewright.image.decode;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * The saturation value of a frame.
 *
 * @param told from the file's header
 * @param typeFull largest value of the file's type; infinite for floating point
 */
record Saturation(OptionalDouble told, float typeFull) {
    /** A stated level that this fraction of the frame reaches must be wrong or mean something else. */
    private static final double MOST_FULL = 0.1;

    private static final int PIECE = 1 << 12;
    private static final int PILE = 8;
    /** A pile-up at the top is compared with all pixels in this fraction of the range below it. */
    private static final double NEAR_TOP = 0.1;

    /**
     * The stated level, otherwise the largest value of the frame if pixels pile up there, otherwise the type's largest.
     *
     * <p>Twelve- and fourteen-bit cameras saturate at 4095 or 16383, or at 16 or 4 times those values, and a header
     * seldom says which. Saturated pixels all have the same, largest value, whereas the counts of background and stars
     * thin out toward theirs. So the largest value is the saturation value if at least eight pixels have it, and more
     * than lie in the tenth of the range (from the frame's background up) below it.
     */
    float of(float[] pixels) {
        Largest[] pieces = IntStream.range(0, (pixels.length + PIECE - 1) / PIECE)
                .parallel()
                .mapToObj(piece -> Largest.of(pixels, piece * PIECE, Math.min(pixels.length, (piece + 1) * PIECE)))
                .toArray(Largest[]::new);
        if (told.isPresent()) {
            float level = (float) told.getAsDouble();
            if (level > 0 && count(pixels, pieces, level) < MOST_FULL * pixels.length) {
                return level;
            }
        }
        Largest found = Arrays.stream(pieces).reduce(Largest.NONE, Largest::with);
        float largest = found.first();
        float second = found.second();
        if (largest >= typeFull || second == Float.NEGATIVE_INFINITY) {
            return typeFull;
        }
        double sky = PixelLevels.of(pixels).level();
        // At least one value further down: the values of an 8-bit frame, or of a shifted one, are far apart.
        float near = Math.min(second, (float) (largest - NEAR_TOP * (largest - sky)));
        int top = count(pixels, pieces, largest);
        int below = count(pixels, pieces, near) - top;
        boolean piled = top >= PILE && top > below && top < MOST_FULL * pixels.length;
        return piled ? largest : typeFull;
    }

    /** Number of pixels that reach a value; parts of the frame that stay below it, as most do, are skipped. */
    private static int count(float[] pixels, Largest[] pieces, float least) {
        int count = 0;
        for (int piece = 0; piece < pieces.length; piece++) {
            if (pieces[piece].first() >= least) {
                int end = Math.min(pixels.length, (piece + 1) * PIECE);
                for (int i = piece * PIECE; i < end; i++) {
                    count += pixels[i] >= least ? 1 : 0;
                }
            }
        }
        return count;
    }

    /** The two largest distinct values; negative infinity if there are none. */
    private record Largest(float first, float second) {
        private static final Largest NONE = new Largest(Float.NEGATIVE_INFINITY, Float.NEGATIVE_INFINITY);

        static Largest of(float[] pixels, int from, int to) {
            float first = Float.NEGATIVE_INFINITY;
            float second = Float.NEGATIVE_INFINITY;
            for (int i = from; i < to; i++) {
                float value = pixels[i];
                // False for NaN.
                if (value > second) {
                    if (value > first) {
                        second = first;
                        first = value;
                    } else if (value < first) {
                        second = value;
                    }
                }
            }
            return new Largest(first, second);
        }

        Largest with(Largest other) {
            Largest higher = first >= other.first ? this : other;
            Largest lower = first >= other.first ? other : this;
            float second = lower.first < higher.first ? lower.first : lower.second;
            return new Largest(higher.first, Math.max(higher.second, second));
        }
    }
}
