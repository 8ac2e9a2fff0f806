package polewright.image.decode;

import java.util.stream.IntStream;

/**
 * Uncompressed 16-bit values, big-endian: what nearly every camera writes. Each of the 65,536 stored values is
 * converted once and then looked up, with rows in parallel on all processors.
 */
final class FitsSixteenBits {
    private static final int VALUES = 1 << Short.SIZE;
    private static final int BLOCK_ROWS = 32;
    // Between two checks of the deadline.
    private static final int BLOCKS_AT_A_TIME = 32;

    private final byte[] content;
    private final int start;
    private final float[] meaning = new float[VALUES];

    /**
     * @param content of the file
     * @param start index of the first value
     * @param physical conversion from stored to physical value
     */
    FitsSixteenBits(byte[] content, int start, FitsScaling physical) {
        this.content = content;
        this.start = start;
        for (int bits = 0; bits < VALUES; bits++) {
            meaning[bits] = (float) physical.of((short) bits);
        }
    }

    void read(int width, int height, float[] pixels, DecodeDeadline deadline) {
        int blocks = (height + BLOCK_ROWS - 1) / BLOCK_ROWS;
        for (int first = 0; first < blocks; first += BLOCKS_AT_A_TIME) {
            deadline.check();
            IntStream.range(first, Math.min(blocks, first + BLOCKS_AT_A_TIME))
                    .parallel()
                    .forEach(block -> {
                        int from = block * BLOCK_ROWS * width;
                        int to = Math.min(height, (block + 1) * BLOCK_ROWS) * width;
                        read(from, to, pixels);
                    });
        }
    }

    private void read(int from, int to, float[] pixels) {
        int at = start + 2 * from;
        for (int i = from; i < to; i++) {
            pixels[i] = meaning[(content[at] & 0xff) << 8 | (content[at + 1] & 0xff)];
            at += 2;
        }
    }
}
