package polewright.frames.star;

import java.util.BitSet;
import java.util.List;
import polewright.frames.Frame;

/** Pixels of a frame that shine by themselves, and are left out from then on. */
final class HotPixels {
    private final int width;
    private final BitSet pixels;

    private HotPixels(int width, BitSet pixels) {
        this.width = width;
        this.pixels = pixels;
    }

    /** None known yet. */
    static HotPixels none(Frame frame) {
        return new HotPixels(frame.width(), new BitSet());
    }

    /** Those of the peaks that are one bright pixel and nothing else. */
    static HotPixels among(List<Peak> peaks, Frame frame, LonePixels lone) {
        BitSet pixels = new BitSet();
        peaks.parallelStream()
                .mapToInt(lone::find)
                .filter(p -> p >= 0)
                .boxed()
                .toList()
                .forEach(pixels::set);
        return new HotPixels(frame.width(), pixels);
    }

    boolean contains(int x, int y) {
        return pixels.get(y * width + x);
    }

    /** Whether one is at a place or touches it. */
    boolean isNear(int x, int y) {
        for (int j = Math.max(0, y - 1); j <= y + 1; j++) {
            int start = j * width + Math.max(0, x - 1);
            int next = pixels.nextSetBit(start);
            if (next >= 0 && next <= j * width + Math.min(width - 1, x + 1)) {
                return true;
            }
        }
        return false;
    }

    int count() {
        return pixels.cardinality();
    }

    /** Puts nought in the place of those in a row of pixels, which starts at {@code offset}. */
    void clear(int y, float[] row, int offset) {
        int start = y * width;
        for (int p = pixels.nextSetBit(start); p >= 0 && p < start + width; p = pixels.nextSetBit(p + 1)) {
            row[p - start + offset] = 0;
        }
    }
}
