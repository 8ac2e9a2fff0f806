package polewright.data;

import java.util.Arrays;
import java.util.function.IntConsumer;

/** Positions on the sky, searchable by distance. */
final class StarPlaces {
    private static final double RAD_PER_ARCSEC = Math.PI / (180 * 3600);

    private final double[] vectors;
    private final int[] byZ;
    private final double[] zs;

    /** @param vectors unit vectors, x, y, z of one position after another */
    StarPlaces(double[] vectors) {
        this.vectors = vectors;
        int size = vectors.length / 3;
        Integer[] order = new Integer[size];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, (a, b) -> Double.compare(vectors[3 * a + 2], vectors[3 * b + 2]));
        this.byZ = new int[size];
        this.zs = new double[size];
        for (int i = 0; i < size; i++) {
            byZ[i] = order[i];
            zs[i] = vectors[3 * order[i] + 2];
        }
    }

    /** Passes on the number of each position within a radius of a unit vector. */
    void within(double arcsec, double[] middle, IntConsumer found) {
        double reach = arcsec * RAD_PER_ARCSEC;
        // Two directions are at least as far apart as their z differ.
        int at = Arrays.binarySearch(zs, middle[2] - reach);
        at = at < 0 ? -at - 1 : firstOf(at);
        for (; at < zs.length && zs[at] <= middle[2] + reach; at++) {
            if (arcsecFrom(byZ[at], middle) <= arcsec) {
                found.accept(byZ[at]);
            }
        }
    }

    private int firstOf(int at) {
        int first = at;
        while (first > 0 && zs[first - 1] == zs[at]) {
            first--;
        }
        return first;
    }

    /** The nearest position within a radius; −1 when there is none. */
    int nearestWithin(double arcsec, double[] middle) {
        int[] nearest = {-1};
        double[] least = {Double.POSITIVE_INFINITY};
        within(arcsec, middle, number -> {
            double distance = arcsecFrom(number, middle);
            if (distance < least[0]) {
                least[0] = distance;
                nearest[0] = number;
            }
        });
        return nearest[0];
    }

    double arcsecFrom(int number, double[] middle) {
        return arcsecBetween(
                new double[] {vectors[3 * number], vectors[3 * number + 1], vectors[3 * number + 2]}, middle);
    }

    static double arcsecBetween(double[] a, double[] b) {
        double chord = Math.sqrt(square(a[0] - b[0]) + square(a[1] - b[1]) + square(a[2] - b[2]));
        return 2 * Math.asin(Math.min(1, chord / 2)) / RAD_PER_ARCSEC;
    }

    private static double square(double x) {
        return x * x;
    }

    static double[] unit(double raDeg, double decDeg) {
        double ra = Math.toRadians(raDeg);
        double dec = Math.toRadians(decDeg);
        return new double[] {Math.cos(dec) * Math.cos(ra), Math.cos(dec) * Math.sin(ra), Math.sin(dec)};
    }
}
