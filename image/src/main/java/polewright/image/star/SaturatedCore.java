package polewright.image.star;

import java.util.Arrays;
import java.util.Optional;
import polewright.image.Frame;

/**
 * The saturated pixels in a star's core. If wells overflow, the charge bleeds along the columns: the thin streak is not
 * part of the star's disc.
 *
 * @param x centre of the disc
 * @param y centre of the disc
 * @param radius of the disc
 * @param disc whether there is one: a satellite's trail, the Moon or a lamp has none
 */
record SaturatedCore(double x, double y, double radius, boolean disc) {
    // No star's disc extends farther; a streak may, and is cut off.
    private static final int REACH = 48;
    private static final int SIDE = 2 * REACH + 1;
    private static final int MOST_PIXELS = 4000;
    // Rows of at least this fraction of the greatest width belong to the disc; thinner ones to the streak.
    private static final double DISC = 0.5;
    // A disc has 0.8 pixels for each square of its width.
    private static final double MOST_FILLED = 3;

    /** The connected saturated pixels around a peak; empty if there are none. */
    static Optional<SaturatedCore> about(Peak peak, Frame frame, float full) {
        int[] pixels = new Lake(peak, frame, full).pixels();
        if (pixels.length == 0) {
            return Optional.empty();
        }
        int[] columns = new int[SIDE];
        int[] rows = new int[SIDE];
        for (int p : pixels) {
            columns[p % SIDE]++;
            rows[p / SIDE]++;
        }
        int wide = extent(columns);
        int high = extent(rows);
        // Charge bleeds along the longer side, if at all.
        int[] lines = high >= wide ? rows : columns;
        int widest = Arrays.stream(lines).max().orElse(0);
        double x = 0;
        double y = 0;
        int n = 0;
        for (int p : pixels) {
            int column = p % SIDE;
            int row = p / SIDE;
            if (lines[high >= wide ? row : column] >= DISC * widest) {
                x += column;
                y += row;
                n++;
            }
        }
        // A line as wide as the disc is a bleed streak only if it runs straight along the columns.
        boolean straight = Math.min(wide, high) <= widest + 1;
        boolean disc = pixels.length <= MOST_PIXELS && (n <= MOST_FILLED * widest * widest || straight);
        double radius = Math.max(widest / 2.0, Math.sqrt(Math.min(n, widest * widest) / Math.PI));
        return Optional.of(new SaturatedCore(peak.x() - REACH + x / n, peak.y() - REACH + y / n, radius, disc));
    }

    private static int extent(int[] counts) {
        int first = 0;
        int last = counts.length - 1;
        while (counts[first] == 0) {
            first++;
        }
        while (counts[last] == 0) {
            last--;
        }
        return last - first + 1;
    }

    /** Connected saturated pixels within reach of a peak. */
    private static final class Lake {
        private final Peak peak;
        private final Frame frame;
        private final float full;
        private final boolean[] seen;
        private final int[] found;

        Lake(Peak peak, Frame frame, float full) {
            this.peak = peak;
            this.frame = frame;
            this.full = full;
            boolean any = isFullNear();
            seen = new boolean[any ? SIDE * SIDE : 0];
            found = new int[seen.length];
        }

        private boolean isFullNear() {
            for (int j = -1; j <= 1; j++) {
                for (int i = -1; i <= 1; i++) {
                    if (isFull(REACH + i, REACH + j)) {
                        return true;
                    }
                }
            }
            return false;
        }

        /** Positions in a square around the peak, row by row. */
        int[] pixels() {
            if (found.length == 0) {
                return found;
            }
            int end = takeAbout(REACH, REACH, 0);
            for (int next = 0; next < end; next++) {
                end = takeAbout(found[next] % SIDE, found[next] / SIDE, end);
            }
            return Arrays.copyOf(found, end);
        }

        private int takeAbout(int column, int row, int end) {
            int more = end;
            for (int y = Math.max(0, row - 1); y <= Math.min(SIDE - 1, row + 1); y++) {
                for (int x = Math.max(0, column - 1); x <= Math.min(SIDE - 1, column + 1); x++) {
                    if (!seen[y * SIDE + x] && isFull(x, y)) {
                        seen[y * SIDE + x] = true;
                        found[more++] = y * SIDE + x;
                    }
                }
            }
            return more;
        }

        private boolean isFull(int column, int row) {
            int x = peak.x() - REACH + column;
            int y = peak.y() - REACH + row;
            return x >= 0
                    && y >= 0
                    && x < frame.width()
                    && y < frame.height()
                    && frame.pixels()[y * frame.width() + x] >= full;
        }
    }
}
