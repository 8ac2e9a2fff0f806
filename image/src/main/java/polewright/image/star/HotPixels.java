package polewright.image.star;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import polewright.image.Frame;

/** The hot pixels of a frame, which are ignored from then on. */
final class HotPixels {
    private final int width;
    private final BitSet pixels;
    // The same in order: they are looked up row by row, and most rows have none.
    private final int[] inOrder;

    private HotPixels(int width, BitSet pixels) {
        this.width = width;
        this.pixels = pixels;
        inOrder = pixels.stream().toArray();
    }

    /** None known yet. */
    static HotPixels none(Frame frame) {
        return new HotPixels(frame.width(), new BitSet());
    }

    /** Those peaks that are a single bright pixel. */
    static HotPixels among(List<Peak> peaks, Frame frame, IsolatedPixels lone) {
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

    /** Whether there is one at a position or adjacent to it. */
    boolean isNear(int x, int y) {
        for (int j = Math.max(0, y - 1); j <= y + 1; j++) {
            int next = firstFrom(j * width + Math.max(0, x - 1));
            if (next < inOrder.length && inOrder[next] <= j * width + Math.min(width - 1, x + 1)) {
                return true;
            }
        }
        return false;
    }

    int count() {
        return inOrder.length;
    }

    /** Sets those in a row of pixels, which starts at {@code offset}, to zero. */
    void clear(int y, float[] row, int offset) {
        int start = y * width;
        for (int i = firstFrom(start); i < inOrder.length && inOrder[i] < start + width; i++) {
            row[inOrder[i] - start + offset] = 0;
        }
    }

    /** Index of the first that is not before a pixel. */
    private int firstFrom(int pixel) {
        int found = Arrays.binarySearch(inOrder, pixel);
        return found < 0 ? -found - 1 : found;
    }
}
