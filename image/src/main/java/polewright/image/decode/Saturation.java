package polewright.image.decode;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * The value at which a pixel is full.
 *
 * @param told by the file's header
 * @param typeFull the largest value that the file's type can hold; infinite for floating point
 */
record Saturation(OptionalDouble told, float typeFull) {
    /** A level told that this share of the frame reaches is a mistake, or another thing. */
    private static final double MOST_FULL = 0.1;

    private static final int PIECE = 1 << 12;
    private static final int PILE = 8;
    /** A pile at the top is held against all that lies in this share of the range below it. */
    private static final double NEAR_TOP = 0.1;

    /**
     * The level told, else where pixels pile up at the largest value of the frame, else the type's largest.
     *
     * <p>Twelve- and fourteen-bit cameras fill at 4095 or 16383, or at those times 16 or 4, and a header seldom says
     * which. Full pixels all have one value, the largest; a sky and its stars thin out toward theirs. So the largest
     * value is taken for full when at least eight pixels have it, and more than lie in the tenth of the range (from the
     * frame's sky up) below it.
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
        // At least one value further down: those of an 8-bit frame, or of a shifted one, lie far apart.
        float near = Math.min(second, (float) (largest - NEAR_TOP * (largest - sky)));
        int top = count(pixels, pieces, largest);
        int below = count(pixels, pieces, near) - top;
        boolean piled = top >= PILE && top > below && top < MOST_FULL * pixels.length;
        return piled ? largest : typeFull;
    }

    /** How many pixels reach a value; pieces of the frame that stay below it, which most do, are passed over. */
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

    /** The two largest values that differ; negative infinity where there are none. */
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
