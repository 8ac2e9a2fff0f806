package polewright.image.decode;

import java.awt.image.ColorModel;
import java.awt.image.ComponentSampleModel;
import java.awt.image.DataBuffer;
import java.awt.image.IndexColorModel;
import java.awt.image.Raster;

/**
 * A decoded picture in grey.
 *
 * <p>Samples are used as stored, without the colour library, which would apply a tone curve of its own to 16-bit grey.
 *
 * @param pixels average of the colours, row by row, without transparency
 * @param full saturation value; infinite for floating point
 * @param planes number of colours averaged
 */
record GreyRaster(@SuppressWarnings("ArrayRecordComponent") float[] pixels, float full, int planes) {
    private static final int BYTE_FULL = 255;
    private static final int SHORT_FULL = 65_535;

    /** Relation of stored values to light. */
    enum Tone {
        AS_STORED,
        SRGB;

        /** Linear light, 0 to 255, for each 8-bit value. */
        float[] ofBytes() {
            float[] light = new float[BYTE_FULL + 1];
            for (int i = 0; i < light.length; i++) {
                double v = i / (double) BYTE_FULL;
                double linear = v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4);
                light[i] = (float) (this == SRGB ? linear * BYTE_FULL : i);
            }
            return light;
        }
    }

    /** From a raster of linear samples. */
    static GreyRaster of(Raster raster) {
        return averaged(raster, raster.getNumBands(), Tone.AS_STORED);
    }

    static GreyRaster of(Raster raster, ColorModel colours, Tone tone) {
        if (colours instanceof IndexColorModel palette) {
            return ofPalette(raster, palette, tone);
        }
        return averaged(raster, Math.min(raster.getNumBands(), colours.getNumColorComponents()), tone);
    }

    private static GreyRaster averaged(Raster raster, int bands, Tone tone) {
        int width = raster.getWidth();
        int height = raster.getHeight();
        Line line = Line.of(raster, tone);
        float[] pixels = new float[Math.multiplyExact(width, height)];
        float[] row = new float[width];
        for (int y = 0; y < height; y++) {
            for (int band = 0; band < bands; band++) {
                line.read(y, band, row);
                int at = y * width;
                for (int x = 0; x < width; x++) {
                    pixels[at + x] =
                            bands == 1 ? row[x] : pixels[at + x] + ColourPlanes.share(row[x], line.full(), bands);
                }
            }
        }
        if (bands > 1) {
            ColourPlanes.fill(pixels, line.full());
        }
        return new GreyRaster(pixels, line.full(), bands);
    }

    private static GreyRaster ofPalette(Raster raster, IndexColorModel palette, Tone tone) {
        float[] light = tone.ofBytes();
        float[] grey = new float[palette.getMapSize()];
        for (int i = 0; i < grey.length; i++) {
            grey[i] = (light[palette.getRed(i)] + light[palette.getGreen(i)] + light[palette.getBlue(i)]) / 3;
        }
        int width = raster.getWidth();
        float[] pixels = new float[Math.multiplyExact(width, raster.getHeight())];
        int[] row = new int[width];
        for (int y = 0; y < raster.getHeight(); y++) {
            raster.getSamples(raster.getMinX(), raster.getMinY() + y, width, 1, 0, row);
            for (int x = 0; x < width; x++) {
                pixels[y * width + x] = row[x] < grey.length ? grey[row[x]] : Float.NaN;
            }
        }
        // A palette is already colour: there cannot be a Bayer mosaic.
        return new GreyRaster(pixels, BYTE_FULL, 3);
    }

    /** Samples of one band, a row at a time. */
    private interface Line {
        void read(int y, int band, float[] row);

        float full();

        static Line of(Raster raster, Tone tone) {
            boolean components = raster.getSampleModel() instanceof ComponentSampleModel;
            if (components && raster.getTransferType() == DataBuffer.TYPE_BYTE) {
                return new Bytes(raster, tone.ofBytes());
            }
            if (components && raster.getTransferType() == DataBuffer.TYPE_USHORT) {
                return new Shorts(raster);
            }
            return new Samples(raster);
        }
    }

    private record Bytes(
            Raster raster,
            @SuppressWarnings("ArrayRecordComponent") float[] light) implements Line {
        @Override
        public void read(int y, int band, float[] row) {
            int bands = raster.getNumBands();
            byte[] stored = new byte[row.length * bands];
            raster.getDataElements(raster.getMinX(), raster.getMinY() + y, row.length, 1, stored);
            for (int x = 0; x < row.length; x++) {
                row[x] = light[stored[x * bands + band] & 0xff];
            }
        }

        @Override
        public float full() {
            return BYTE_FULL;
        }
    }

    private record Shorts(Raster raster) implements Line {
        @Override
        public void read(int y, int band, float[] row) {
            int bands = raster.getNumBands();
            short[] stored = new short[row.length * bands];
            raster.getDataElements(raster.getMinX(), raster.getMinY() + y, row.length, 1, stored);
            for (int x = 0; x < row.length; x++) {
                row[x] = stored[x * bands + band] & 0xffff;
            }
        }

        @Override
        public float full() {
            return SHORT_FULL;
        }
    }

    /** Any other layout: bits, integers, floating point. */
    private record Samples(Raster raster) implements Line {
        @Override
        public void read(int y, int band, float[] row) {
            raster.getSamples(raster.getMinX(), raster.getMinY() + y, row.length, 1, band, row);
        }

        @Override
        public float full() {
            int type = raster.getTransferType();
            return type == DataBuffer.TYPE_FLOAT || type == DataBuffer.TYPE_DOUBLE
                    ? Float.POSITIVE_INFINITY
                    : (float) (Math.scalb(1.0, raster.getSampleModel().getSampleSize(0)) - 1);
        }
    }
}
