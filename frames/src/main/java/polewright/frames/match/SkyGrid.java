package polewright.frames.match;

import polewright.sky.atlas.StarField;

/**
 * The brightest stars of a field sorted into cells of sky, to find those near a direction.
 *
 * <p>Zones of equal height in declination, each cut into cells of about that width. Stars keep their number in the
 * field, which is their rank in brightness.
 */
final class SkyGrid {
    private final double heightRad;
    private final int zones;
    private final int[] firstCell;
    private final int[] cellStarts;
    private final int[] members;
    // In the order of members, so that a cell's stars are read in one sweep; to 0.01″, enough to search by.
    private final float[] vectors;

    /** Takes the stars of a search, by their rank in brightness. */
    @FunctionalInterface
    interface Visitor {
        /**
         * Takes one star.
         *
         * @param chord2 square of its distance from the middle, straight through the unit sphere; to 0.01″
         */
        void star(int rank, double chord2);
    }

    /**
     * @param stars brightest first
     * @param raRad right ascension of each, radians
     * @param decRad declination of each, radians
     * @param count how many of them to hold
     * @param heightRad height of a cell, radians
     */
    SkyGrid(StarField stars, float[] raRad, float[] decRad, int count, double heightRad) {
        this.zones = Math.max(1, (int) Math.min(20_000, Math.floor(Math.PI / heightRad)));
        this.heightRad = Math.PI / zones;
        this.firstCell = new int[zones + 1];
        for (int zone = 0; zone < zones; zone++) {
            firstCell[zone + 1] = firstCell[zone] + cellsAround(zone);
        }
        int cells = firstCell[zones];
        cellStarts = new int[cells + 1];
        int[] cellOf = new int[count];
        for (int i = 0; i < count; i++) {
            cellOf[i] = cellAt(raRad[i], decRad[i]);
            cellStarts[cellOf[i] + 1]++;
        }
        for (int cell = 0; cell < cells; cell++) {
            cellStarts[cell + 1] += cellStarts[cell];
        }
        members = new int[count];
        int[] next = cellStarts.clone();
        // In the order of rank, so that inside a cell the brightest comes first.
        for (int i = 0; i < count; i++) {
            members[next[cellOf[i]]++] = i;
        }
        vectors = new float[3 * count];
        for (int m = 0; m < count; m++) {
            vectors[3 * m] = (float) stars.x(members[m]);
            vectors[3 * m + 1] = (float) stars.y(members[m]);
            vectors[3 * m + 2] = (float) stars.z(members[m]);
        }
    }

    private int cellsAround(int zone) {
        double low = zone * heightRad - Math.PI / 2;
        double widest = low <= 0 && low + heightRad >= 0 ? 0 : Math.min(Math.abs(low), Math.abs(low + heightRad));
        return Math.max(1, (int) (2 * Math.PI * Math.cos(widest) / heightRad));
    }

    private int zoneAt(double decRad) {
        return Math.max(0, Math.min(zones - 1, (int) Math.floor((decRad + Math.PI / 2) / heightRad)));
    }

    private int cellAt(double raRad, double decRad) {
        int zone = zoneAt(decRad);
        int cells = firstCell[zone + 1] - firstCell[zone];
        int column = (int) (raRad / (2 * Math.PI) * cells);
        return firstCell[zone] + Math.max(0, Math.min(cells - 1, column));
    }

    /**
     * Visits the stars within a radius that are brighter than a rank.
     *
     * @param raRad right ascension of the middle, [0, 2π)
     * @param decRad its declination
     * @param x unit vector of the middle, and y and z
     * @param radiusRad up to π
     * @param below only stars of a smaller number than this
     */
    void near(double raRad, double decRad, double x, double y, double z, double radiusRad, int below, Visitor visitor) {
        double chord = 2 * Math.sin(Math.min(Math.PI, radiusRad) / 2);
        double chord2 = chord * chord;
        // The places in the cells are rounded to floats.
        double reach = radiusRad + 1e-6;
        int first = zoneAt(decRad - reach);
        int last = zoneAt(decRad + reach);
        double cosDec = Math.cos(decRad);
        boolean wholeZones = reach >= Math.PI / 2 || Math.sin(reach) >= cosDec;
        double halfWidth = wholeZones ? Math.PI : Math.asin(Math.sin(reach) / cosDec) + 1e-6;
        for (int zone = first; zone <= last; zone++) {
            int cells = firstCell[zone + 1] - firstCell[zone];
            int from = 0;
            int columns = cells;
            if (!wholeZones) {
                from = (int) Math.floor((raRad - halfWidth) / (2 * Math.PI) * cells);
                int to = (int) Math.floor((raRad + halfWidth) / (2 * Math.PI) * cells);
                columns = Math.min(cells, to - from + 1);
            }
            for (int i = 0; i < columns; i++) {
                int cell = firstCell[zone] + Math.floorMod(from + i, cells);
                for (int m = cellStarts[cell]; m < cellStarts[cell + 1]; m++) {
                    int rank = members[m];
                    if (rank >= below) {
                        break;
                    }
                    double dx = vectors[3 * m] - x;
                    double dy = vectors[3 * m + 1] - y;
                    double dz = vectors[3 * m + 2] - z;
                    double apart2 = dx * dx + dy * dy + dz * dz;
                    if (apart2 <= chord2) {
                        visitor.star(rank, apart2);
                    }
                }
            }
        }
    }
}
