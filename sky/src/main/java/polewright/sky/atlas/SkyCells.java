package polewright.sky.atlas;

/**
 * The sky divided into cells of at most 1° by 1°, with positions inside a cell as two 16-bit numbers.
 *
 * <p>Zones of declination are 1° high, numbered from the south pole. A zone is divided in right ascension, from 0h,
 * into the smallest number of equal cells that are at most 1° wide on the sky. Cells are numbered eastward in a zone,
 * zone after zone.
 *
 * <p>Inside a cell, a position is stored as {@code floor(fraction · 65536)} of the cell's width and height and read
 * back at the middle of that step, so it is accurate to 0.028″ in each coordinate.
 */
public final class SkyCells {
    public static final int ZONES = 180;

    private static final int STEPS = 1 << 16;
    private static final int[] FIRST_CELL_OF_ZONE = firstCells();

    private SkyCells() {}

    private static int[] firstCells() {
        int[] first = new int[ZONES + 1];
        for (int zone = 0; zone < ZONES; zone++) {
            // The edge nearer the equator is the longer one.
            double widestDec = zone < 90 ? zone - 89 : zone - 90;
            int cells = (int) Math.ceil(360 * Math.cos(Math.toRadians(widestDec)) - 1e-9);
            first[zone + 1] = first[zone] + cells;
        }
        return first;
    }

    /** How many cells cover the sky. */
    public static int count() {
        return FIRST_CELL_OF_ZONE[ZONES];
    }

    /** The number of a zone's first cell; {@code firstCell(ZONES)} is {@link #count()}. */
    public static int firstCell(int zone) {
        return FIRST_CELL_OF_ZONE[zone];
    }

    public static int cellsIn(int zone) {
        return FIRST_CELL_OF_ZONE[zone + 1] - FIRST_CELL_OF_ZONE[zone];
    }

    /** The zone of a declination from −90° to 90°; the north pole lies in the last zone. */
    public static int zoneAt(double declinationDeg) {
        return Math.min(ZONES - 1, Math.max(0, (int) Math.floor(declinationDeg + 90)));
    }

    /** The zone that contains a cell. */
    public static int zoneOf(int cell) {
        int low = 0;
        int high = ZONES - 1;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (FIRST_CELL_OF_ZONE[middle] <= cell) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return low;
    }

    /** The cell at a right ascension of 0° or more and under 360°. */
    public static int cellAt(double rightAscensionDeg, double declinationDeg) {
        int zone = zoneAt(declinationDeg);
        int cells = cellsIn(zone);
        int column = Math.min(cells - 1, (int) Math.floor(rightAscensionDeg / 360 * cells));
        return FIRST_CELL_OF_ZONE[zone] + column;
    }

    /** The position inside its cell eastward, 0 to 65535. */
    public static int eastStep(double rightAscensionDeg, double declinationDeg) {
        int zone = zoneAt(declinationDeg);
        double columns = rightAscensionDeg / 360 * cellsIn(zone);
        int column = cellAt(rightAscensionDeg, declinationDeg) - FIRST_CELL_OF_ZONE[zone];
        return step(columns - column);
    }

    /** The position inside its cell northward, 0 to 65535. */
    public static int northStep(double declinationDeg) {
        return step(declinationDeg + 90 - zoneAt(declinationDeg));
    }

    private static int step(double fraction) {
        return Math.min(STEPS - 1, Math.max(0, (int) Math.floor(fraction * STEPS)));
    }

    /** Right ascension, in degrees, of a step inside a cell of a zone. */
    public static double rightAscensionDeg(int zone, int cell, int eastStep) {
        return (cell - FIRST_CELL_OF_ZONE[zone] + (eastStep + 0.5) / STEPS) / cellsIn(zone) * 360;
    }

    /** Declination, in degrees, of a step inside a zone. */
    public static double declinationDeg(int zone, int northStep) {
        return zone - 90 + (northStep + 0.5) / STEPS;
    }
}
