package polewright.image.decode;

import java.io.IOException;
import polewright.image.Frame;
import polewright.sky.InputRefused;

/**
 * Decodes the first image of a FITS file, in its primary HDU or an extension, plain or tile-compressed.
 *
 * <p>The library reads headers and opens tiles; uncompressed values are read in place. Values are {@code BZERO + BSCALE
 * × stored}; {@code BLANK} becomes NaN (FITS standard 4.0, sections 4.4.2.5 and 5.2). Row 0 is the first row stored.
 */
final class FitsDecoder {
    private FitsDecoder() {}

    static Frame decode(byte[] content, DecodeOptions options) throws IOException {
        FitsUnit first = FitsUnit.at(content, 0);
        FitsUnit unit = first;
        while (true) {
            options.deadline().check();
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
        FitsShape shape = FitsShape.of(unit.axes());
        requireWhole(content, unit, shape);
        FrameSize.check(shape.width(), shape.height(), 0, options);
        FitsScaling scaling = FitsScaling.of(unit, "BITPIX");
        int bitpix = bitpix(unit, "BITPIX");
        if (bitpix == Short.SIZE && shape.planes() == 1) {
            float[] pixels = new float[shape.pixels()];
            new FitsSixteenBits(content, unit.dataStart(), scaling)
                    .read(shape.width(), shape.height(), pixels, options.deadline());
            return frame(pixels, shape, scaling, keywords, options);
        }
        return frame(FitsRows.stored(content, unit.dataStart(), bitpix), shape, scaling, keywords, options);
    }

    private static Frame compressed(byte[] content, FitsUnit unit, FitsKeywords keywords, DecodeOptions options)
            throws IOException {
        FitsShape shape = FitsShape.of(FitsTiles.axes(unit));
        requireWhole(content, unit, shape);
        int bytesPerValue = Math.abs(bitpix(unit, "ZBITPIX")) / 8;
        FitsScaling scaling = FitsScaling.of(unit, "ZBITPIX");
        return frame(FitsTiles.open(content, unit, shape, bytesPerValue, options), shape, scaling, keywords, options);
    }

    private static Frame frame(
            FitsRows rows, FitsShape shape, FitsScaling scaling, FitsKeywords keywords, DecodeOptions options) {
        float[] pixels = new float[shape.pixels()];
        for (int plane = 0; plane < shape.planes(); plane++) {
            add(rows, plane, shape, scaling, pixels, options.deadline());
        }
        if (shape.planes() > 1) {
            ColourPlanes.fill(pixels, scaling.full());
        }
        return frame(pixels, shape, scaling, keywords, options);
    }

    private static Frame frame(
            float[] pixels, FitsShape shape, FitsScaling scaling, FitsKeywords keywords, DecodeOptions options) {
        Saturation saturation = new Saturation(keywords.saturation(), scaling.full());
        return FrameAssembly.pixels(
                shape.width(),
                shape.height(),
                pixels,
                saturation,
                isMosaic(shape, keywords, options.mosaic()),
                FitsFacts.of(keywords, options.cameraZone()));
    }

    private static void add(
            FitsRows rows, int plane, FitsShape shape, FitsScaling scaling, float[] pixels, DecodeDeadline deadline) {
        double[] row = new double[shape.width()];
        int planes = shape.planes();
        float full = scaling.full();
        for (int y = 0; y < shape.height(); y++) {
            deadline.check();
            int at = y * shape.width();
            rows.read(plane * shape.pixels() + at, row);
            scaling.apply(row);
            for (int x = 0; x < row.length; x++) {
                float value = (float) row[x];
                pixels[at + x] = planes == 1 ? value : pixels[at + x] + ColourPlanes.share(value, full, planes);
            }
        }
    }

    private static boolean isMosaic(FitsShape shape, FitsKeywords keywords, Mosaic told) {
        return shape.planes() == 1
                && (told == Mosaic.BAYER || (told == Mosaic.AS_THE_FILE_SAYS && keywords.hasColourFilterPattern()));
    }

    private static void requireWhole(byte[] content, FitsUnit unit, FitsShape shape) {
        if (!unit.isWhole(content)) {
            throw new InputRefused(
                    "it says it has " + shape.width() + " by " + shape.height() + " pixels, "
                            + unit.dataBytes() + " bytes, and only "
                            + (content.length - unit.dataStart()) + " are present",
                    "wait until it is fully saved, or take the frame again");
        }
    }

    private static InputRefused cutShort(byte[] content, FitsUnit unit) {
        return new InputRefused(
                "it says it has " + unit.dataBytes() + " bytes of data, and only " + (content.length - unit.dataStart())
                        + " are present",
                "wait until it is fully saved, or take the frame again");
    }

    private static int bitpix(FitsUnit unit, String keyword) {
        int bitpix = (int) unit.counts().orElse(keyword, 0, Integer.MIN_VALUE, Integer.MAX_VALUE);
        return switch (bitpix) {
            case 8, 16, 32, 64, -32, -64 -> bitpix;
            default ->
                throw new InputRefused(
                        "its pixels are of " + keyword + " " + bitpix + ", which FITS does not define",
                        "take the frame again");
        };
    }
}
