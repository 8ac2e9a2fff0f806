package polewright.image.match;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * For each star of a field, its three nearest brighter neighbours.
 *
 * <p>This choice depends on neither scale nor limiting magnitude: a camera that records a star also records the
 * brighter stars around it, so it finds the same three whatever its depth.
 */
final class BrighterNeighbours {
    /** Neighbours per star. */
    static final int EACH = 3;

    // Closer than this fraction of the pattern's size, two stars may be merged in a picture.
    private static final double MERGED_SHARE = 0.04;
    private static final int CANDIDATES = 6;
    private static final double LARGEST_RAD = Math.toRadians(40);
    private static final int STARS_PER_CELL = 2;

    private BrighterNeighbours() {}

    /**
     * Finds them on all processors.
     *
     * @return {@link #EACH} ranks per star, nearest first; −1 if there are not that many, or the star is merged with a
     *     brighter one
     */
    static int[] of(MappedStars sky) {
        int count = sky.count();
        int[] neighbours = new int[EACH * count];
        Arrays.fill(neighbours, -1);
        // Each block of stars is searched in a grid that suits its density: coarse for the few bright ones.
        int from = EACH;
        while (from < count) {
            int to = Math.min(count, Math.max(64, 2 * from));
            double cell = sky.cellRad(to, STARS_PER_CELL);
            SkyGrid grid = sky.gridOf(to, STARS_PER_CELL);
            int slices = Math.max(1, (to - from) / 512);
            int start = from;
            IntStream.range(0, slices).parallel().forEach(slice -> {
                Search search = new Search(sky, grid, cell);
                int end = start + (int) ((long) (to - start) * (slice + 1) / slices);
                for (int rank = start + (int) ((long) (to - start) * slice / slices); rank < end; rank++) {
                    search.find(rank, neighbours);
                }
            });
            from = to;
        }
        return neighbours;
    }

    /** One thread's search; its arrays are reused for each star. */
    private static final class Search implements SkyGrid.Visitor {
        private final MappedStars sky;
        private final SkyGrid grid;
        private final double firstRadiusRad;
        private final int[] nearest = new int[CANDIDATES];
        private final double[] chord2 = new double[CANDIDATES];
        private final int[] counts = new int[1];

        Search(MappedStars sky, SkyGrid grid, double cellRad) {
            this.sky = sky;
            this.grid = grid;
            // Holds 7 stars on average if half of the grid's stars are brighter.
            this.firstRadiusRad = cellRad * 1.5;
        }

        @Override
        public void star(int rank, double distance) {
            int size = counts[0];
            if (size == CANDIDATES && distance >= chord2[size - 1]) {
                return;
            }
            int at = Math.min(size, CANDIDATES - 1);
            while (at > 0 && chord2[at - 1] > distance) {
                chord2[at] = chord2[at - 1];
                nearest[at] = nearest[at - 1];
                at--;
            }
            chord2[at] = distance;
            nearest[at] = rank;
            counts[0] = Math.min(CANDIDATES, size + 1);
        }

        void find(int rank, int[] neighbours) {
            double x = sky.coordinate(rank, 0);
            double y = sky.coordinate(rank, 1);
            double z = sky.coordinate(rank, 2);
            double radius = firstRadiusRad;
            while (true) {
                counts[0] = 0;
                grid.near(x, y, z, radius, rank, this);
                if (counts[0] >= CANDIDATES || radius >= LARGEST_RAD) {
                    break;
                }
                radius = Math.min(LARGEST_RAD, radius * (counts[0] >= EACH + 1 ? 1.4 : 2));
            }
            choose(rank, neighbours);
        }

        private void choose(int rank, int[] neighbours) {
            if (counts[0] < EACH) {
                return;
            }
            double merged2 = chord2[EACH - 1] * MERGED_SHARE * MERGED_SHARE;
            if (chord2[0] < merged2) {
                return;
            }
            int chosen = 0;
            int base = EACH * rank;
            for (int i = 0; i < counts[0] && chosen < EACH; i++) {
                if (standsApart(nearest[i], neighbours, base, chosen, merged2)) {
                    neighbours[base + chosen++] = nearest[i];
                }
            }
            if (chosen < EACH) {
                neighbours[base] = -1;
            }
        }

        private boolean standsApart(int candidate, int[] neighbours, int base, int chosen, double merged2) {
            for (int i = 0; i < chosen; i++) {
                int other = neighbours[base + i];
                double dx = sky.coordinate(candidate, 0) - sky.coordinate(other, 0);
                double dy = sky.coordinate(candidate, 1) - sky.coordinate(other, 1);
                double dz = sky.coordinate(candidate, 2) - sky.coordinate(other, 2);
                if (dx * dx + dy * dy + dz * dz < merged2) {
                    return false;
                }
            }
            return true;
        }
    }
}
