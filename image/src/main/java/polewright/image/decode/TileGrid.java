package polewright.image.decode;

import polewright.sky.InputRefused;

/**
 * How an image is divided into tiles: rectangles within one plane, the last of a row or column possibly smaller (FITS
 * standard 4.0, section 10.1.1).
 *
 * @param shape of the image
 * @param width columns of a tile, 1 to the image's
 * @param height rows of a tile, 1 to the image's
 */
record TileGrid(FitsShape shape, int width, int height) {
    /**
     * The grid from a header. Without {@code ZTILEn} each row is a tile.
     *
     * @throws InputRefused if a tile is empty, or larger than the image
     */
    static TileGrid of(FitsUnit unit, FitsAxes axes, FitsShape shape) {
        FitsCounts counts = unit.counts();
        int width = (int) counts.orElse("ZTILE1", shape.width(), 1, shape.width());
        int height = (int) counts.orElse("ZTILE2", 1, 1, shape.height());
        for (int axis = 3; axis <= axes.count(); axis++) {
            // The library only divides within planes.
            counts.orElse("ZTILE" + axis, 1, 1, 1);
        }
        return new TileGrid(shape, width, height);
    }

    /** Number of tiles in the image; the table has a row for each. */
    long tiles() {
        return columns() * rows() * shape.planes();
    }

    /** Columns of the tile in a row of the table. */
    long widthOf(long tableRow) {
        return Math.min(width, shape.width() - tableRow % columns() * width);
    }

    /** Rows of the tile in a row of the table. */
    long heightOf(long tableRow) {
        return Math.min(height, shape.height() - tableRow / columns() % rows() * height);
    }

    private long columns() {
        return (shape.width() + (long) width - 1) / width;
    }

    private long rows() {
        return (shape.height() + (long) height - 1) / height;
    }
}
