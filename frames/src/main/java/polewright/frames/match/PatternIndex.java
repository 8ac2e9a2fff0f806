package polewright.frames.match;

import java.util.stream.IntStream;
import polewright.sky.atlas.StarField;

/**
 * The patterns of a field's stars, found by their codes.
 *
 * <p>Four-dimensional cells of codes, sorted by counting. Built from 1.87 million stars in about two seconds, from the
 * ten thousand around a pole in a hundredth of one. Immutable; may be shared between threads.
 */
final class PatternIndex {
    private static final int MOST_CELLS_A_SIDE = 48;

    private final MappedStars sky;
    private final StarField stars;
    private final int[] neighbours;
    private final int side;
    private final int[] cellStarts;
    private final int[] patterns;
    private final float[] codes;

    /** Takes the patterns of a search. */
    @FunctionalInterface
    interface Visitor {
        /**
         * Takes one pattern.
         *
         * @param rank of its star; see {@link #neighbour}
         */
        void pattern(int rank);
    }

    PatternIndex(MappedStars sky) {
        this.sky = sky;
        this.stars = sky.stars();
        int count = sky.count();
        neighbours = BrighterNeighbours.of(sky);
        side = Math.max(4, Math.min(MOST_CELLS_A_SIDE, (int) Math.round(Math.sqrt(Math.sqrt(2.0 * count)))));
        cellStarts = new int[side * side * side * side + 1];
        float[] unsorted = new float[PatternCode.LENGTH * count];
        int[] cellOf = new int[count];
        IntStream.range(0, count).parallel().forEach(rank -> {
            boolean whole = neighbours[BrighterNeighbours.EACH * rank] >= 0 && writeCode(rank, unsorted);
            cellOf[rank] = whole ? cell(unsorted, PatternCode.LENGTH * rank) : -1;
        });
        int total = 0;
        for (int rank = 0; rank < count; rank++) {
            if (cellOf[rank] >= 0) {
                cellStarts[cellOf[rank] + 1]++;
                total++;
            }
        }
        for (int cell = 0; cell + 1 < cellStarts.length; cell++) {
            cellStarts[cell + 1] += cellStarts[cell];
        }
        patterns = new int[total];
        codes = new float[PatternCode.LENGTH * total];
        int[] next = cellStarts.clone();
        for (int rank = 0; rank < count; rank++) {
            if (cellOf[rank] >= 0) {
                int at = next[cellOf[rank]]++;
                patterns[at] = rank;
                System.arraycopy(
                        unsorted, PatternCode.LENGTH * rank, codes, PatternCode.LENGTH * at, PatternCode.LENGTH);
            }
        }
    }

    MappedStars sky() {
        return sky;
    }

    /** How many patterns there are. */
    int patternCount() {
        return patterns.length;
    }

    /**
     * A star of a pattern.
     *
     * @param rank of the star that the pattern belongs to
     * @param role 0 the farthest, 1 the first and 2 the second of its code
     */
    int neighbour(int rank, int role) {
        return neighbours[BrighterNeighbours.EACH * rank + role];
    }

    /** Visits the patterns whose code differs by no more than a tolerance in any figure. */
    void like(float[] code, float tolerance, Visitor visitor) {
        int low0 = slot(code[0] - tolerance);
        int high0 = slot(code[0] + tolerance);
        int low1 = slot(code[1] - tolerance);
        int high1 = slot(code[1] + tolerance);
        int low2 = slot(code[2] - tolerance);
        int high2 = slot(code[2] + tolerance);
        int low3 = slot(code[3] - tolerance);
        int high3 = slot(code[3] + tolerance);
        for (int i = low0; i <= high0; i++) {
            for (int j = low1; j <= high1; j++) {
                for (int k = low2; k <= high2; k++) {
                    int row = ((i * side + j) * side + k) * side;
                    for (int at = cellStarts[row + low3]; at < cellStarts[row + high3 + 1]; at++) {
                        int c = PatternCode.LENGTH * at;
                        if (Math.abs(codes[c] - code[0]) <= tolerance
                                && Math.abs(codes[c + 1] - code[1]) <= tolerance
                                && Math.abs(codes[c + 2] - code[2]) <= tolerance
                                && Math.abs(codes[c + 3] - code[3]) <= tolerance) {
                            visitor.pattern(patterns[at]);
                        }
                    }
                }
            }
        }
    }

    /** Works out a star's code, and puts its neighbours in the order of their roles. */
    private boolean writeCode(int rank, float[] into) {
        double sx = stars.x(rank);
        double sy = stars.y(rank);
        double sz = stars.z(rank);
        // Two directions square to the star's and to each other, the third being the star's.
        double ex;
        double ey;
        double ez;
        if (Math.abs(sz) < 0.9) {
            double norm = 1 / Math.hypot(sx, sy);
            ex = -sy * norm;
            ey = sx * norm;
            ez = 0;
        } else {
            double norm = 1 / Math.hypot(sy, sz);
            ex = 0;
            ey = -sz * norm;
            ez = sy * norm;
        }
        double nx = sy * ez - sz * ey;
        double ny = sz * ex - sx * ez;
        double nz = sx * ey - sy * ex;
        int base = BrighterNeighbours.EACH * rank;
        double[] px = new double[BrighterNeighbours.EACH];
        double[] py = new double[BrighterNeighbours.EACH];
        int far = 0;
        for (int i = 0; i < BrighterNeighbours.EACH; i++) {
            int other = neighbours[base + i];
            double x = stars.x(other);
            double y = stars.y(other);
            double z = stars.z(other);
            px[i] = x * ex + y * ey + z * ez;
            py[i] = x * nx + y * ny + z * nz;
            if (px[i] * px[i] + py[i] * py[i] > px[far] * px[far] + py[far] * py[far]) {
                far = i;
            }
        }
        if (px[far] == 0 && py[far] == 0) {
            return false;
        }
        int a = (far + 1) % BrighterNeighbours.EACH;
        int b = (far + 2) % BrighterNeighbours.EACH;
        int at = PatternCode.LENGTH * rank;
        PatternCode.write(px[far], py[far], px[a], py[a], px[b], py[b], false, into, at);
        boolean exchanged = PatternCode.order(into, at);
        int farStar = neighbours[base + far];
        int aStar = neighbours[base + a];
        int bStar = neighbours[base + b];
        neighbours[base] = farStar;
        neighbours[base + 1] = exchanged ? bStar : aStar;
        neighbours[base + 2] = exchanged ? aStar : bStar;
        return true;
    }

    private int cell(float[] code, int at) {
        return ((slot(code[at]) * side + slot(code[at + 1])) * side + slot(code[at + 2])) * side + slot(code[at + 3]);
    }

    private int slot(float figure) {
        return Math.max(0, Math.min(side - 1, (int) ((figure + 1) / 2 * side)));
    }
}
