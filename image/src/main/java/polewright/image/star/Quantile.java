package polewright.image.star;

/** The k-th smallest of some numbers, without sorting them all (Hoare 1961, Find). */
final class Quantile {
    private Quantile() {}

    /** Partially sorts the first {@code n} values, so that {@code values[k]} is what sorting would put there. */
    static float select(float[] values, int n, int k) {
        int low = 0;
        int high = n - 1;
        while (low < high) {
            float pivot = values[(low + high) >>> 1];
            int i = low;
            int j = high;
            while (i <= j) {
                while (values[i] < pivot) {
                    i++;
                }
                while (values[j] > pivot) {
                    j--;
                }
                if (i <= j) {
                    float swapped = values[i];
                    values[i++] = values[j];
                    values[j--] = swapped;
                }
            }
            if (k <= j) {
                high = j;
            } else if (k >= i) {
                low = i;
            } else {
                break;
            }
        }
        return values[k];
    }
}
