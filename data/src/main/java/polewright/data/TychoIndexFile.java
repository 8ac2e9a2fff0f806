package polewright.data;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.Arrays;
import nom.tam.fits.BinaryTable;
import nom.tam.fits.FitsException;
import nom.tam.fits.Header;
import nom.tam.util.FitsFile;

/**
 * The stars of one little-endian Tycho-2 index file.
 *
 * <p>Three of its binary tables are read:
 * <ul>
 * <li>{@code kdtree_range_stars}: 7 doubles, the minima and maxima of x, y, z, then a scale;
 * <li>{@code kdtree_data_stars}: 3 unsigned 32-bit integers per star; component = minimum + value / scale;
 * <li>{@code MAG_VT}: 1 float per star in the same order (big-endian, unlike the others, as in FITS).
 * </ul>
 */
final class TychoIndexFile {
    private static final int BYTES_PER_VECTOR = 12;

    private final double[] vectors;
    private final float[] magnitudes;

    private TychoIndexFile(double[] vectors, float[] magnitudes) {
        this.vectors = vectors;
        this.magnitudes = magnitudes;
    }

    int size() {
        return magnitudes.length;
    }

    /** Unit vectors, x, y, z of one star after another; not a copy. */
    double[] vectors() {
        return vectors;
    }

    /** Tycho VT; not a copy. */
    float[] magnitudes() {
        return magnitudes;
    }

    double[] unit(int star) {
        return Arrays.copyOfRange(vectors, 3 * star, 3 * star + 3);
    }

    float magnitude(int star) {
        return magnitudes[star];
    }

    static TychoIndexFile read(Path file) throws IOException {
        byte[] range = null;
        byte[] data = null;
        float[] magnitudes = null;
        try (FitsFile in = new FitsFile(file.toFile(), "r")) {
            while (in.getFilePointer() < in.length() && (range == null || data == null || magnitudes == null)) {
                Header header = Header.readHeader(in);
                switch (header.getStringValue("TTYPE1", "")) {
                    case "kdtree_range_stars" -> range = bytes(header, in);
                    case "kdtree_data_stars" -> data = bytes(header, in);
                    case "MAG_VT" -> magnitudes = (float[]) table(header, in).getColumn(0);
                    default -> in.skipAllBytes(header.getDataSize());
                }
            }
        } catch (FitsException broken) {
            throw new IOException(file + " is not a readable FITS file", broken);
        }
        if (range == null || data == null || magnitudes == null) {
            throw new IOException(file + " lacks a table of star places or of MAG_VT");
        }
        return new TychoIndexFile(vectors(range, data, magnitudes.length), magnitudes);
    }

    private static double[] vectors(byte[] range, byte[] data, int size) throws IOException {
        if (data.length != size * BYTES_PER_VECTOR) {
            throw new IOException("as many places as magnitudes expected, but " + data.length + " bytes for " + size);
        }
        ByteBuffer ranges = ByteBuffer.wrap(range).order(ByteOrder.LITTLE_ENDIAN);
        ByteBuffer places = ByteBuffer.wrap(data).order(ByteOrder.LITTLE_ENDIAN);
        double scale = ranges.getDouble(6 * Double.BYTES);
        double[] vectors = new double[3 * size];
        for (int i = 0; i < vectors.length; i++) {
            double least = ranges.getDouble((i % 3) * Double.BYTES);
            vectors[i] = least + Integer.toUnsignedLong(places.getInt(i * Integer.BYTES)) / scale;
        }
        return vectors;
    }

    /** A table declared as text that contains numbers: read as raw bytes. */
    private static byte[] bytes(Header header, FitsFile in) throws FitsException {
        int width = header.getIntValue("NAXIS1");
        header.addValue("TFORM1", width + "B", "bytes");
        byte[][] rows = (byte[][]) table(header, in).getColumn(0);
        ByteBuffer all = ByteBuffer.allocate(rows.length * width);
        for (byte[] row : rows) {
            all.put(row);
        }
        return all.array();
    }

    // The newer way, reading whole HDUs, gives no chance to declare the columns as bytes.
    @SuppressWarnings("deprecation")
    private static BinaryTable table(Header header, FitsFile in) throws FitsException {
        BinaryTable table = new BinaryTable(header);
        table.read(in);
        return table;
    }
}
