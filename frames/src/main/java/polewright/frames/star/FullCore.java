package polewright.frames.star;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import polewright.frames.Frame;

/**
 * The full pixels in a star's middle, which say only that there was too much light. Where wells run over, the charge
 * flows along the columns: the thin streak it leaves is no part of the star's disc.
 *
 * @param x centre of the disc
 * @param y centre of the disc
 * @param radius of the disc
 * @param disc whether there is one: a satellite's trail, the Moon or a lamp is none
 */
record FullCore(double x, double y, double radius, boolean disc) {
    private static final int MOST_PIXELS = 8000;
    // Rows at least so wide, of the widest, are the disc; thinner ones are the streak.
    private static final double DISC = 0.5;
    // A disc has 0.8 pixels for each square of its width.
    private static final double MOST_FILLED = 3;

    /** The full pixels that hang together about a peak; empty where there are none. */
    static Optional<FullCore> about(Peak peak, Frame frame, float full) {
        List<int[]> pixels = gather(peak, frame, full);
        if (pixels.isEmpty()) {
            return Optional.empty();
        }
        int columns = extent(pixels, 0);
        int rows = extent(pixels, 1);
        // Charge runs along the longer side, if it runs at all.
        return Optional.of(across(pixels, rows >= columns ? 1 : 0));
    }

    private static FullCore across(List<int[]> pixels, int line) {
        int least = pixels.stream().mapToInt(p -> p[line]).min().orElse(0);
        int[] width = new int[extent(pixels, line)];
        pixels.forEach(p -> width[p[line] - least]++);
        int widest = 0;
        for (int w : width) {
            widest = Math.max(widest, w);
        }
        double x = 0;
        double y = 0;
        int n = 0;
        for (int[] p : pixels) {
            if (width[p[line] - least] >= DISC * widest) {
                x += p[0];
                y += p[1];
                n++;
            }
        }
        // A line as wide as the disc is a streak of charge only if it runs straight along the columns.
        boolean straight = extent(pixels, 1 - line) <= widest + 1;
        boolean disc = pixels.size() <= MOST_PIXELS && (n <= MOST_FILLED * widest * widest || straight);
        double radius = Math.max(widest / 2.0, Math.sqrt(Math.min(n, widest * widest) / Math.PI));
        return new FullCore(x / n, y / n, radius, disc);
    }

    private static int extent(List<int[]> pixels, int axis) {
        return pixels.stream().mapToInt(p -> p[axis]).max().orElse(0)
                - pixels.stream().mapToInt(p -> p[axis]).min().orElse(0)
                + 1;
    }

    /** The pixel nearest the peak that is full, and all that touch it. */
    private static List<int[]> gather(Peak peak, Frame frame, float full) {
        Deque<int[]> waiting = new ArrayDeque<>();
        Set<Integer> seen = new HashSet<>();
        List<int[]> pixels = new ArrayList<>();
        offer(peak.x(), peak.y(), frame, full, waiting, seen);
        while (!waiting.isEmpty() && pixels.size() <= MOST_PIXELS) {
            int[] at = waiting.remove();
            if (frame.pixels()[at[1] * frame.width() + at[0]] >= full) {
                pixels.add(at);
                offer(at[0], at[1], frame, full, waiting, seen);
            }
        }
        return pixels;
    }

    private static void offer(int x, int y, Frame frame, float full, Deque<int[]> waiting, Set<Integer> seen) {
        for (int j = Math.max(0, y - 1); j <= Math.min(frame.height() - 1, y + 1); j++) {
            for (int i = Math.max(0, x - 1); i <= Math.min(frame.width() - 1, x + 1); i++) {
                if (frame.pixels()[j * frame.width() + i] >= full && seen.add(j * frame.width() + i)) {
                    waiting.add(new int[] {i, j});
                }
            }
        }
    }
}
