package polewright.image.decode;

import java.nio.Buffer;
import java.nio.ByteBuffer;
import java.nio.DoubleBuffer;
import java.nio.FloatBuffer;
import java.nio.IntBuffer;
import java.nio.LongBuffer;
import java.nio.ShortBuffer;

/** Stored values of a FITS image of any type, a row at a time: the whole picture is never copied. */
@FunctionalInterface
interface FitsRows {
    /** Fills {@code row} with the values that begin at {@code first}. */
    void read(int first, double[] row);

    /**
     * Uncompressed values: big-endian, bytes unsigned.
     *
     * @param bitpix 8, 16, 32, 64, −32 or −64
     * @throws IllegalArgumentException for any other
     */
    static FitsRows stored(byte[] content, int start, int bitpix) {
        ByteBuffer data =
                ByteBuffer.wrap(content, start, content.length - start).slice();
        return switch (bitpix) {
            case 8 -> of(data);
            case 16 -> of(data.asShortBuffer());
            case 32 -> of(data.asIntBuffer());
            case 64 -> of(data.asLongBuffer());
            case -32 -> of(data.asFloatBuffer());
            case -64 -> of(data.asDoubleBuffer());
            default -> throw new IllegalArgumentException("BITPIX " + bitpix);
        };
    }

    /** Values in a buffer of the matching type. */
    static FitsRows of(Buffer buffer) {
        if (buffer instanceof ShortBuffer shorts) {
            return shorts(shorts);
        }
        if (buffer instanceof IntBuffer ints) {
            return ints(ints);
        }
        if (buffer instanceof FloatBuffer floats) {
            return (first, row) -> {
                for (int i = 0; i < row.length; i++) {
                    row[i] = floats.get(first + i);
                }
            };
        }
        if (buffer instanceof ByteBuffer bytes) {
            return (first, row) -> {
                for (int i = 0; i < row.length; i++) {
                    row[i] = bytes.get(first + i) & 0xff;
                }
            };
        }
        if (buffer instanceof DoubleBuffer doubles) {
            return (first, row) -> doubles.get(first, row);
        }
        if (buffer instanceof LongBuffer longs) {
            return (first, row) -> {
                for (int i = 0; i < row.length; i++) {
                    row[i] = longs.get(first + i);
                }
            };
        }
        throw new IllegalArgumentException("no pixels in " + buffer.getClass());
    }

    private static FitsRows shorts(ShortBuffer shorts) {
        return (first, row) -> {
            short[] stored = new short[row.length];
            shorts.get(first, stored);
            for (int i = 0; i < row.length; i++) {
                row[i] = stored[i];
            }
        };
    }

    private static FitsRows ints(IntBuffer ints) {
        return (first, row) -> {
            int[] stored = new int[row.length];
            ints.get(first, stored);
            for (int i = 0; i < row.length; i++) {
                row[i] = stored[i];
            }
        };
    }
}
