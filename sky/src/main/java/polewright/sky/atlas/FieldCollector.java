package polewright.sky.atlas;

import java.util.Arrays;

/** Collects the stars of a search in growing columns, then sorts them brightest first. */
final class FieldCollector implements StarVisitor {
    private int size;
    private int[] numbers = new int[256];
    private double[] vectors = new double[3 * 256];
    private float[] magnitudes = new float[256];

    @Override
    public void star(int number, double x, double y, double z, double magnitude) {
        if (size == numbers.length) {
            numbers = Arrays.copyOf(numbers, 2 * size);
            vectors = Arrays.copyOf(vectors, 6 * size);
            magnitudes = Arrays.copyOf(magnitudes, 2 * size);
        }
        numbers[size] = number;
        vectors[3 * size] = x;
        vectors[3 * size + 1] = y;
        vectors[3 * size + 2] = z;
        magnitudes[size] = (float) magnitude;
        size++;
    }

    StarField brightestFirst(StarAtlas atlas) {
        // One long per star, with the magnitude above the position in the list: sorts as primitives, and equal
        // magnitudes keep their order.
        long[] order = new long[size];
        for (int i = 0; i < size; i++) {
            order[i] = (long) sortable(magnitudes[i]) << 32 | i;
        }
        Arrays.sort(order);
        int[] sortedNumbers = new int[size];
        double[] sortedVectors = new double[3 * size];
        float[] sortedMagnitudes = new float[size];
        for (int to = 0; to < size; to++) {
            int from = (int) order[to];
            sortedNumbers[to] = numbers[from];
            sortedMagnitudes[to] = magnitudes[from];
            System.arraycopy(vectors, 3 * from, sortedVectors, 3 * to, 3);
        }
        return new StarField(atlas, sortedNumbers, sortedVectors, sortedMagnitudes);
    }

    /** An int that sorts as the float does, negative magnitudes included. */
    private static int sortable(float value) {
        int bits = Float.floatToIntBits(value);
        return bits < 0 ? bits ^ Integer.MAX_VALUE : bits;
    }
}
