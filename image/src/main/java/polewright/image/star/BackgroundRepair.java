package polewright.image.star;

import java.util.Arrays;

/** Replaces nodes that are filled by an object, or have no background, by the median of their neighbours. */
final class BackgroundRepair {
    private static final double FAR = 3;

    private BackgroundRepair() {}

    static float[] withoutObjects(float[] nodes, int columns, int rows) {
        return withoutObjects(nodes, nodes, columns, rows);
    }

    /** If the noise is an outlier among its neighbours', both level and noise belong to an object. */
    static float[] withoutObjects(float[] nodes, float[] noise, int columns, int rows) {
        float[] repaired = nodes.clone();
        for (int r = 0; r < rows; r++) {
            for (int c = 0; c < columns; c++) {
                int i = r * columns + c;
                float usual = neighbours(noise, columns, rows, c, r, 1);
                if (!(noise[i] <= FAR * usual) && !(usual == 0 && noise[i] > 0)) {
                    repaired[i] = neighbours(nodes, columns, rows, c, r, 1);
                }
                for (int reach = 2; !(repaired[i] > Float.NEGATIVE_INFINITY) && reach < columns + rows; reach *= 2) {
                    repaired[i] = neighbours(nodes, columns, rows, c, r, reach);
                }
            }
        }
        for (int i = 0; i < repaired.length; i++) {
            repaired[i] = repaired[i] > Float.NEGATIVE_INFINITY ? repaired[i] : 0;
        }
        return repaired;
    }

    private static float neighbours(float[] nodes, int columns, int rows, int c, int r, int reach) {
        float[] found = new float[(2 * reach + 1) * (2 * reach + 1)];
        int n = 0;
        for (int y = Math.max(0, r - reach); y <= Math.min(rows - 1, r + reach); y++) {
            for (int x = Math.max(0, c - reach); x <= Math.min(columns - 1, c + reach); x++) {
                float v = nodes[y * columns + x];
                if ((x != c || y != r) && v > Float.NEGATIVE_INFINITY) {
                    found[n++] = v;
                }
            }
        }
        if (n == 0) {
            return Float.NaN;
        }
        Arrays.sort(found, 0, n);
        return found[n / 2];
    }
}
