package polewright.image.decode;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.Buffer;
import nom.tam.fits.FitsException;
import nom.tam.fits.Header;
import nom.tam.image.compression.hdu.CompressedImageData;
import nom.tam.image.compression.hdu.CompressedImageHDU;
import nom.tam.util.FitsInputStream;

/**
 * Opens a tile-compressed image (FITS standard 4.0, section 10). The library decompresses it; its input has been
 * checked before, because it validates no number.
 */
final class FitsTiles {
    private FitsTiles() {}

    /** The axes of the compressed image. */
    static FitsAxes axes(FitsUnit unit) {
        return FitsAxes.of(unit.counts(), "ZNAXIS", 1);
    }

    /**
     * Stored values of the whole image. The whole HDU must be in the file.
     *
     * @throws polewright.sky.InputRefused if the table does not fit the image, or it claims more than the limits allow
     */
    static FitsRows open(byte[] content, FitsUnit unit, FitsShape shape, int bytesPerValue, DecodeOptions options)
            throws IOException {
        int bytesPerPixel = bytesPerValue * shape.planes();
        FrameSize.check(shape.width(), shape.height(), bytesPerPixel, options);
        FrameSize.checkHolds(unit.dataBytes(), shape.width(), shape.height(), bytesPerPixel);
        TileGrid grid = TileGrid.of(unit, axes(unit), shape);
        TileTable.of(unit, grid).requireWithinHeap(content, grid);
        return FitsRows.of(opened(content, unit));
    }

    // The library recommends a whole second image instead, which would need twice the memory.
    @SuppressWarnings("deprecation")
    private static Buffer opened(byte[] content, FitsUnit unit) throws IOException {
        Header header = unit.header();
        for (int column = 1; column <= header.getIntValue("TFIELDS"); column++) {
            // No column of tiles has a shape, and the library would allocate memory according to it.
            header.deleteKey("TDIM" + column);
        }
        if (!isQuantised(header)) {
            // The library would scale by a missing column and return zeros.
            header.deleteKey("ZQUANTIZ");
        }
        int size = (int) (Math.min(unit.next(), content.length) - unit.dataStart());
        try (FitsInputStream in = new FitsInputStream(new ByteArrayInputStream(content, unit.dataStart(), size))) {
            CompressedImageData tiles = CompressedImageHDU.manufactureData(header);
            tiles.read(in);
            return new CompressedImageHDU(header, tiles).getUncompressedData();
        } catch (FitsException e) {
            throw new IOException(e);
        }
    }

    /**
     * Whether floating point was quantised to integers, each tile with its own scale; ZQUANTIZ alone does not show
     * this.
     */
    private static boolean isQuantised(Header header) {
        for (int column = 1; column <= header.getIntValue("TFIELDS"); column++) {
            if ("ZSCALE".equals(header.getStringValue("TTYPE" + column, "").trim())) {
                return true;
            }
        }
        return header.containsKey("ZSCALE");
    }
}
