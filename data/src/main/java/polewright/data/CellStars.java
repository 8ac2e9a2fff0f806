package polewright.data;

import java.io.DataOutputStream;
import java.io.IOException;
import java.util.Arrays;
import polewright.sky.atlas.SkyCells;
import polewright.sky.atlas.StarAtlas;

/** Collects stars, then packs them cell by cell, brightest first in each. */
final class CellStars {
    private static final int BITS_EAST = 16;
    private static final int BITS_NORTH = 16;
    private static final int BITS_MAGNITUDE = 8;

    private int size;
    // Cell, magnitude, east and north from the highest bit down: sorting these numbers gives the order of the file.
    private long[] keys = new long[1 << 21];

    int size() {
        return size;
    }

    void add(double[] unit, double magnitude) {
        double dec = Math.toDegrees(Math.atan2(unit[2], Math.hypot(unit[0], unit[1])));
        double turned = Math.toDegrees(Math.atan2(unit[1], unit[0]));
        double ra = turned < 0 ? turned + 360 : turned;
        long step = Math.round(magnitude * StarAtlas.STEPS_PER_MAGNITUDE);
        if (step < 0 || step > 255) {
            throw new IllegalArgumentException("magnitude " + magnitude + " does not fit the atlas");
        }
        if (size == keys.length) {
            keys = Arrays.copyOf(keys, 2 * size);
        }
        long key = SkyCells.cellAt(ra, dec);
        key = key << BITS_MAGNITUDE | step;
        key = key << BITS_EAST | SkyCells.eastStep(ra, dec);
        key = key << BITS_NORTH | SkyCells.northStep(dec);
        keys[size++] = key;
    }

    /** As described by {@link StarAtlas}: the number of stars of each cell, then the stars. */
    void writeTo(DataOutputStream out) throws IOException {
        Arrays.sort(keys, 0, size);
        int[] counts = new int[SkyCells.count()];
        for (int i = 0; i < size; i++) {
            counts[(int) (keys[i] >>> (BITS_MAGNITUDE + BITS_EAST + BITS_NORTH))]++;
        }
        for (int count : counts) {
            if (count > 0xffff) {
                throw new IllegalStateException("a cell of " + count + " stars does not fit the atlas");
            }
            out.writeShort(count);
        }
        for (int i = 0; i < size; i++) {
            // Steps east and north as one number of 32 bits, then the magnitude.
            out.writeInt((int) keys[i]);
            out.writeByte((int) (keys[i] >>> (BITS_EAST + BITS_NORTH)));
        }
    }
}
