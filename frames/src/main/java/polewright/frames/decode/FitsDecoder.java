package polewright.frames.decode;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.Buffer;
import nom.tam.fits.Fits;
import nom.tam.fits.FitsException;
import nom.tam.image.compression.hdu.CompressedImageHDU;
import polewright.frames.Frame;
import polewright.sky.InputRefused;

/**
 * The first image of a FITS file, in its first unit or an extension, plain or compressed by tiles.
 *
 * <p>The library reads headers and opens tiles; plainly stored values are read where they lie. Values are
 * {@code BZERO + BSCALE × stored}; {@code BLANK} becomes NaN (FITS standard 4.0, sections 4.4.2.5 and 5.2). Row 0 is the
 * first row stored.
 */
final class FitsDecoder {
    private static final int COLOURS = 3;

    private FitsDecoder() {}

    static Frame decode(byte[] content, DecodeOptions options) throws IOException {
        FitsUnit first = FitsUnit.at(content, 0);
        FitsUnit unit = first;
        while (true) {
            FitsKeywords keywords = new FitsKeywords(unit.header(), first.header());
            if (unit.isImage()) {
                return plain(content, unit, keywords, options);
            }
            if (unit.isCompressedImage()) {
                return compressed(content, unit, keywords, options);
            }
            long next = unit.next();
            if (!FitsUnit.mayStartAt(content, next)) {
                throw unit.isWhole(content)
                        ? new InputRefused("there is no image in this FITS file", "give a file with a frame in it")
                        : cutShort(content, unit);
            }
            unit = FitsUnit.at(content, (int) next);
        }
    }

    private static Frame plain(byte[] content, FitsUnit unit, FitsKeywords keywords, DecodeOptions options) {
        Shape shape = Shape.of(unit, "NAXIS");
        requireWhole(content, unit, shape);
        FrameSize.check(shape.width, shape.height, 0, options);
        FitsRows rows = FitsRows.stored(content, unit.dataStart(), bitpix(unit, "BITPIX"));
        return frame(rows, shape, Scaling.of(unit, "BITPIX"), keywords, options);
    }

    private static Frame compressed(byte[] content, FitsUnit unit, FitsKeywords keywords, DecodeOptions options)
            throws IOException {
        Shape shape = Shape.of(unit, "ZNAXIS");
        requireWhole(content, unit, shape);
        int bytesPerValue = Math.abs(bitpix(unit, "ZBITPIX")) / 8;
        FrameSize.check(shape.width, shape.height, bytesPerValue * shape.planes, options);
        requireTilesToFit(unit, shape);
        TileTable.of(unit).requireWithinHeap(content);
        int size = (int) (Math.min(unit.next(), content.length) - unit.start());
        try (Fits fits = new Fits(new ByteArrayInputStream(content, unit.start(), size))) {
            if (fits.readHDU() instanceof CompressedImageHDU tiles) {
                if (!isQuantised(unit)) {
                    // The library would scale by a column that is not there, and give zeros.
                    tiles.getHeader().deleteKey("ZQUANTIZ");
                }
                FitsRows rows = FitsRows.of(opened(tiles));
                return frame(rows, shape, Scaling.of(unit, "ZBITPIX"), keywords, options);
            }
            throw new IOException("not a table of tiles");
        } catch (FitsException e) {
            throw new IOException(e);
        }
    }

    // The library advises a whole second image instead, which would take twice the memory.
    @SuppressWarnings("deprecation")
    private static Buffer opened(CompressedImageHDU tiles) throws FitsException {
        return tiles.getUncompressedData();
    }

    /** Whether floating point was stored as integers, each tile with its scale; ZQUANTIZ alone does not say it. */
    private static boolean isQuantised(FitsUnit unit) {
        for (int column = 1; column <= unit.header().getIntValue("TFIELDS", 0); column++) {
            if ("ZSCALE"
                    .equals(unit.header().getStringValue("TTYPE" + column, "").trim())) {
                return true;
            }
        }
        return unit.header().containsKey("ZSCALE");
    }

    private static Frame frame(
            FitsRows rows, Shape shape, Scaling scaling, FitsKeywords keywords, DecodeOptions options) {
        float[] pixels = new float[shape.pixels()];
        for (int plane = 0; plane < shape.planes; plane++) {
            add(rows, plane, shape, scaling, pixels);
        }
        float full = scaling.full();
        if (shape.planes > 1) {
            ColourPlanes.fill(pixels, full);
        }
        Saturation saturation = new Saturation(keywords.saturation(), full);
        return FrameOf.pixels(
                shape.width,
                shape.height,
                pixels,
                saturation,
                isMosaic(shape, keywords, options.mosaic()),
                FitsFacts.of(keywords));
    }

    private static void add(FitsRows rows, int plane, Shape shape, Scaling scaling, float[] pixels) {
        double[] row = new double[shape.width];
        int planes = shape.planes;
        float full = scaling.full();
        for (int y = 0; y < shape.height; y++) {
            int at = y * shape.width;
            rows.read(plane * shape.pixels() + at, row);
            scaling.apply(row);
            for (int x = 0; x < row.length; x++) {
                float value = (float) row[x];
                pixels[at + x] = planes == 1 ? value : pixels[at + x] + ColourPlanes.share(value, full, planes);
            }
        }
    }

    private static boolean isMosaic(Shape shape, FitsKeywords keywords, Mosaic told) {
        return shape.planes == 1
                && (told == Mosaic.BAYER || (told == Mosaic.AS_THE_FILE_SAYS && keywords.saysMosaic()));
    }

    private static void requireWhole(byte[] content, FitsUnit unit, Shape shape) {
        if (!unit.isWhole(content)) {
            throw new InputRefused(
                    "it says it has " + shape.width + " by " + shape.height + " pixels, "
                            + unit.dataBytes() + " bytes, and only "
                            + (content.length - unit.dataStart()) + " are there",
                    "wait until it is saved whole, or take the frame again");
        }
    }

    private static InputRefused cutShort(byte[] content, FitsUnit unit) {
        return new InputRefused(
                "it says it has " + unit.dataBytes() + " bytes of data, and only " + (content.length - unit.dataStart())
                        + " are there",
                "wait until it is saved whole, or take the frame again");
    }

    private static int bitpix(FitsUnit unit, String keyword) {
        int bitpix = unit.header().getIntValue(keyword, 0);
        return switch (bitpix) {
            case 8, 16, 32, 64, -32, -64 -> bitpix;
            default ->
                throw new InputRefused(
                        "its pixels are of " + keyword + " " + bitpix + ", which FITS does not have",
                        "take the frame again");
        };
    }

    /** One row of the table for each tile: else the header lies, and the library would believe it. */
    private static void requireTilesToFit(FitsUnit unit, Shape shape) {
        double tiles = 1;
        for (int axis = 1; axis <= unit.axes("ZNAXIS"); axis++) {
            long length = unit.axis("ZNAXIS", axis);
            long tile = unit.header().getLongValue("ZTILE" + axis, axis == 1 ? length : 1);
            if (tile < 1) {
                tiles = -1;
                break;
            }
            tiles *= Math.ceil((double) length / tile);
        }
        long rows = unit.axis("NAXIS", 2);
        if (tiles != rows) {
            throw new InputRefused(
                    "its " + rows + " compressed tiles do not make " + shape.width + " by " + shape.height + " pixels",
                    "take the frame again");
        }
    }

    /** Columns, rows, and planes of colour: 1 or 3. */
    private record Shape(int width, int height, int planes) {
        static Shape of(FitsUnit unit, String keyword) {
            long width = unit.axis(keyword, 1);
            long height = unit.axis(keyword, 2);
            long planes = 1;
            for (int axis = 3; axis <= unit.axes(keyword); axis++) {
                long length = unit.axis(keyword, axis);
                planes = length < 1 || length > Integer.MAX_VALUE ? 0 : planes * length;
            }
            if (planes != 1 && planes != COLOURS) {
                throw new InputRefused(
                        "it holds a stack of " + planes + " planes of " + width + " by " + height + " pixels",
                        "give single frames: one plane, or three of colour");
            }
            if (width < 1 || height < 1 || width > Integer.MAX_VALUE || height > Integer.MAX_VALUE) {
                throw new InputRefused("its size is " + width + " by " + height + " pixels", "take the frame again");
            }
            return new Shape((int) width, (int) height, (int) planes);
        }

        int pixels() {
            return Math.multiplyExact(width, height);
        }
    }

    /**
     * From stored to physical values.
     *
     * @param zero BZERO
     * @param scale BSCALE
     * @param blank the stored value of a pixel that has none; NaN when there is no such value
     * @param full the largest value that the type can hold; infinite for floating point
     */
    private record Scaling(double zero, double scale, double blank, float full) {
        static Scaling of(FitsUnit unit, String bitpixKeyword) {
            int bitpix = unit.header().getIntValue(bitpixKeyword);
            double zero = unit.header().getDoubleValue("BZERO", 0);
            double scale = unit.header().getDoubleValue("BSCALE", 1);
            if (!Double.isFinite(zero) || !Double.isFinite(scale) || scale == 0) {
                throw new InputRefused("its BSCALE is " + scale + " and its BZERO is " + zero, "take the frame again");
            }
            if (bitpix < 0) {
                return new Scaling(zero, scale, Double.NaN, Float.POSITIVE_INFINITY);
            }
            double blank = unit.header().getDoubleValue("BLANK", unit.header().getDoubleValue("ZBLANK", Double.NaN));
            double most = bitpix == 8 ? 255 : Math.scalb(1.0, bitpix - 1) - 1;
            double least = bitpix == 8 ? 0 : -Math.scalb(1.0, bitpix - 1);
            return new Scaling(zero, scale, blank, (float) (zero + scale * (scale > 0 ? most : least)));
        }

        void apply(double[] row) {
            if (!Double.isNaN(blank)) {
                for (int x = 0; x < row.length; x++) {
                    if (row[x] == blank) {
                        row[x] = Double.NaN;
                    }
                }
            }
            for (int x = 0; x < row.length; x++) {
                row[x] = zero + scale * row[x];
            }
        }
    }
}
