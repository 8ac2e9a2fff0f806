package polewright.fuzz;

/**
 * How much memory one execution may allocate, all of its garbage included.
 *
 * @param bytes whatever the input
 * @param perInputByte more for each byte of the input
 */
record Allowance(long bytes, long perInputByte) {
    static final long MEGABYTE = 1_000_000;

    long of(byte[] input) {
        return bytes + perInputByte * input.length;
    }
}
