package polewright.fuzz;

/**
 * Limit on the memory that one execution may allocate, including all garbage.
 *
 * @param bytes for any input
 * @param perInputByte in addition, for each byte of the input
 */
record Allowance(long bytes, long perInputByte) {
    static final long MEGABYTE = 1_000_000;

    long of(byte[] input) {
        return bytes + perInputByte * input.length;
    }
}
