package polewright.data;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import nom.tam.fits.BinaryTable;
import nom.tam.fits.BinaryTableHDU;
import nom.tam.fits.Fits;
import nom.tam.fits.FitsException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TychoIndexFileTest {
    private static final double SCALE = 2147483647.5;

    @TempDir
    Path folder;

    @Test
    void positionsAndMagnitudes_areReadFromTablesDeclaredAsText() throws IOException, FitsException {
        double[] star = StarPlaces.unit(219.9, -60.83);
        ByteBuffer range = little(7 * Double.BYTES);
        for (double value : new double[] {-1, -1, -1, 1, 1, 1, SCALE}) {
            range.putDouble(value);
        }
        ByteBuffer data = little(3 * Integer.BYTES);
        for (double component : star) {
            data.putInt((int) Math.round((component + 1) * SCALE));
        }
        Path file = folder.resolve("index.fits");
        try (Fits fits = new Fits()) {
            fits.addHDU(table("kdtree_range_stars", rows(range, Double.BYTES)));
            fits.addHDU(table("kdtree_data_stars", rows(data, 3 * Integer.BYTES)));
            fits.addHDU(table("MAG_VT", new float[] {1.35f}));
            fits.write(file.toFile());
        }

        TychoIndexFile read = TychoIndexFile.read(file);

        assertThat(read.size()).isEqualTo(1);
        assertThat(read.magnitude(0)).isEqualTo(1.35f);
        assertThat(StarPlaces.arcsecBetween(read.unit(0), star)).isCloseTo(0, within(0.001));
    }

    @Test
    void fileWithoutTheTables_isRefused() throws IOException, FitsException {
        Path file = folder.resolve("index.fits");
        try (Fits fits = new Fits()) {
            fits.addHDU(table("MAG_VT", new float[] {1.35f}));
            fits.write(file.toFile());
        }
        assertThatThrownBy(() -> TychoIndexFile.read(file))
                .isInstanceOf(IOException.class)
                .hasMessage(file + " lacks a table of star places or of MAG_VT");
    }

    private static ByteBuffer little(int bytes) {
        return ByteBuffer.allocate(bytes).order(ByteOrder.LITTLE_ENDIAN);
    }

    private static byte[][] rows(ByteBuffer bytes, int width) {
        byte[][] rows = new byte[bytes.capacity() / width][width];
        for (int i = 0; i < rows.length; i++) {
            bytes.get(i * width, rows[i]);
        }
        return rows;
    }

    private static BinaryTableHDU table(String name, Object column) throws FitsException {
        BinaryTable table = new BinaryTable();
        table.addColumn(column);
        BinaryTableHDU hdu = table.toHDU();
        hdu.setColumnName(0, name, null);
        if (column instanceof byte[][] rows) {
            hdu.getHeader().addValue("TFORM1", rows[0].length + "A", "as the index files have it");
        }
        return hdu;
    }
}
