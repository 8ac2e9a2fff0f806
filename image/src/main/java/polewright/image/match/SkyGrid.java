package polewright.image.match;

import java.util.stream.IntStream;

/**
 * The brightest stars of a field sorted into cells of sky, to find those near a direction.
 *
 * <p>Zones of equal height in declination, each divided into cells of about that width. Stars keep their index in the
 * field, which is their rank in brightness.
 *
 * <p>Positions are unit vectors in the ICRS, each coordinate in steps of {@link #STEP}: to 0.0002″, in half the memory.
 */
final class SkyGrid {
    /** One step of a stored coordinate. */
    static final double STEP = 1.0 / (1 << 30);

    /** Coordinates of one star. */
    static final int AXES = 3;

    private static final double STEPS_PER_RADIUS = 1 << 30;

    private final double heightRad;
    private final int zones;
    private final int[] firstCell;
    private final int[] cellStarts;
    private final int[] members;
    // In the order of members, so that a cell's stars are read sequentially.
    private final int[] places;

    /** Receives the stars of a search, by their rank in brightness. */
    @FunctionalInterface
    interface Visitor {
        /**
         * Receives one star.
         *
         * @param chord2 squared chord length from the middle, on the unit sphere
         */
        void star(int rank, double chord2);
    }

    /** Unit vectors by rank. */
    @FunctionalInterface
    interface Directions {
        /** One coordinate of a star: 0 for x, 1 for y, 2 for z. */
        double of(int rank, int axis);
    }

    /**
     * @param stars brightest first
     * @param count how many of them to hold
     * @param heightRad height of a cell, radians
     */
    SkyGrid(Directions stars, int count, double heightRad) {
        zones = Math.max(1, (int) Math.min(20_000, Math.floor(Math.PI / heightRad)));
        this.heightRad = Math.PI / zones;
        firstCell = firstCells(zones);
        int cells = firstCell[zones];
        cellStarts = new int[cells + 1];
        int[] cellOf = new int[count];
        IntStream.range(0, count)
                .parallel()
                .forEach(rank -> cellOf[rank] =
                        cellAt(rightAscension(stars.of(rank, 0), stars.of(rank, 1)), declination(stars.of(rank, 2))));
        for (int rank = 0; rank < count; rank++) {
            cellStarts[cellOf[rank] + 1]++;
        }
        for (int cell = 0; cell < cells; cell++) {
            cellStarts[cell + 1] += cellStarts[cell];
        }
        members = new int[count];
        places = new int[AXES * count];
        int[] next = cellStarts.clone();
        // In the order of rank, so that inside a cell the brightest comes first.
        for (int rank = 0; rank < count; rank++) {
            int slot = next[cellOf[rank]]++;
            members[slot] = rank;
            for (int axis = 0; axis < AXES; axis++) {
                places[AXES * slot + axis] = steps(stars.of(rank, axis));
            }
        }
    }

    /**
     * From the store.
     *
     * @param members rank of the star in each slot, cell after cell
     * @param places three coordinates per slot, in steps
     * @param cellStarts first slot of each cell, and the number of slots
     */
    SkyGrid(int zones, int[] cellStarts, int[] members, int[] places) {
        this.zones = zones;
        this.heightRad = Math.PI / zones;
        this.firstCell = firstCells(zones);
        this.cellStarts = cellStarts;
        this.members = members;
        this.places = places;
    }

    /** A coordinate of a unit vector in whole steps. */
    static int steps(double coordinate) {
        return (int) Math.rint(coordinate * STEPS_PER_RADIUS);
    }

    /** From 0 to 2π. */
    static double rightAscension(double x, double y) {
        double ra = Math.atan2(y, x);
        return ra < 0 ? ra + 2 * Math.PI : ra;
    }

    static double declination(double z) {
        return Math.asin(Math.max(-1, Math.min(1, z)));
    }

    /** The total number of cells in this many zones. */
    static int cells(int zones) {
        return firstCells(zones)[zones];
    }

    private static int[] firstCells(int zones) {
        double height = Math.PI / zones;
        int[] first = new int[zones + 1];
        for (int zone = 0; zone < zones; zone++) {
            double low = zone * height - Math.PI / 2;
            double widest = low <= 0 && low + height >= 0 ? 0 : Math.min(Math.abs(low), Math.abs(low + height));
            first[zone + 1] = first[zone] + Math.max(1, (int) (2 * Math.PI * Math.cos(widest) / height));
        }
        return first;
    }

    int zones() {
        return zones;
    }

    /** First slot of a cell; for the number of cells it is the number of slots. */
    int cellStart(int cell) {
        return cellStarts[cell];
    }

    /** Number of stars. */
    int size() {
        return members.length;
    }

    /** The rank of the star in a slot. */
    int member(int slot) {
        return members[slot];
    }

    /** A coordinate of the star in a slot, in steps. */
    int place(int slot, int axis) {
        return places[AXES * slot + axis];
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
     * @param x unit vector of the middle, and y and z
     * @param radiusRad up to π
     * @param below only stars of a smaller rank than this
     */
    void near(double x, double y, double z, double radiusRad, int below, Visitor visitor) {
        double raRad = rightAscension(x, y);
        double decRad = declination(z);
        double chord = 2 * Math.sin(Math.min(Math.PI, radiusRad) / 2);
        double chord2 = chord * chord;
        // Positions in the cells are rounded to steps, and a star may have moved since it was put into its cell.
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
                for (int slot = cellStarts[cell]; slot < cellStarts[cell + 1]; slot++) {
                    int rank = members[slot];
                    if (rank >= below) {
                        break;
                    }
                    double dx = STEP * places[AXES * slot] - x;
                    double dy = STEP * places[AXES * slot + 1] - y;
                    double dz = STEP * places[AXES * slot + 2] - z;
                    double apart2 = dx * dx + dy * dy + dz * dz;
                    if (apart2 <= chord2) {
                        visitor.star(rank, apart2);
                    }
                }
            }
        }
    }
}
