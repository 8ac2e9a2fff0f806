package polewright.frames.star;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Of measurements that fell on the same star, keeps one. */
final class CloseStars {
    private static final int CELL = 32;
    private static final double SAME = 0.7;
    // About a star with a full core, its rays and the ring of its wings look like faint stars.
    private static final double HALO = 1.5;
    private static final double HALO_SHARE = 0.05;

    private CloseStars() {}

    /** Stars, brightest first, without those that a brighter one had already. */
    static List<FoundStar> merged(List<FoundStar> brightestFirst) {
        List<FoundStar> kept = new ArrayList<>();
        Map<Long, List<FoundStar>> cells = new HashMap<>();
        for (FoundStar star : brightestFirst) {
            if (!isTaken(star, cells)) {
                kept.add(star);
                cells.computeIfAbsent(cell(star.x(), star.y(), 0, 0), k -> new ArrayList<>(2))
                        .add(star);
            }
        }
        return kept;
    }

    private static boolean isTaken(FoundStar star, Map<Long, List<FoundStar>> cells) {
        for (int j = -1; j <= 1; j++) {
            for (int i = -1; i <= 1; i++) {
                for (FoundStar other : cells.getOrDefault(cell(star.x(), star.y(), i, j), List.of())) {
                    double apart = Math.hypot(star.x() - other.x(), star.y() - other.y());
                    boolean halo =
                            other.saturated() && star.flux() < HALO_SHARE * other.flux() && apart < HALO * other.fwhm();
                    if (halo || apart < Math.max(1, SAME * other.fwhm())) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    private static long cell(double x, double y, int right, int down) {
        long column = Math.floorDiv((long) Math.floor(x), CELL) + right;
        long row = Math.floorDiv((long) Math.floor(y), CELL) + down;
        return row * Integer.MAX_VALUE + column;
    }
}
