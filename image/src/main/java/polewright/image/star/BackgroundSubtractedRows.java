package polewright.image.star;

import polewright.image.Frame;

/** The rows of a frame with the background subtracted and unit noise; may be used from several threads. */
interface BackgroundSubtractedRows {
    int width();

    int height();

    /** Binning factor in each direction. */
    int binning();

    /** Rows to be read by one thread from the top down. */
    Reader reader();

    /** Reads rows, with buffers of its own. */
    @FunctionalInterface
    interface Reader {
        /** Writes a row whose first pixel is at {@code offset}; NaN where pixels are missing. */
        void read(int y, float[] into, int offset);
    }

    /** Unbinned, with known hot pixels left out. */
    record Full(Frame frame, BackgroundMesh mesh, HotPixels hot) implements BackgroundSubtractedRows {
        @Override
        public int width() {
            return frame.width();
        }

        @Override
        public int height() {
            return frame.height();
        }

        @Override
        public int binning() {
            return 1;
        }

        @Override
        public Reader reader() {
            BackgroundMesh.RowScaler scaler = mesh.rowScaler();
            return (y, into, offset) -> {
                scaler.read(frame.pixels(), y, into, offset);
                hot.clear(y, into, offset);
            };
        }
    }

    /**
     * Binned 2 × 2: wide stars lose nothing, and finding them takes a fifth of the work. An odd last row or column is
     * left out.
     */
    record Binned(Full full) implements BackgroundSubtractedRows {
        @Override
        public int width() {
            return full.width() / 2;
        }

        @Override
        public int height() {
            return full.height() / 2;
        }

        @Override
        public int binning() {
            return 2;
        }

        @Override
        public Reader reader() {
            Reader pixels = full.reader();
            float[] upper = new float[full.width()];
            float[] lower = new float[full.width()];
            int width = width();
            return (y, into, offset) -> {
                pixels.read(2 * y, upper, 0);
                pixels.read(2 * y + 1, lower, 0);
                sumInto(upper, lower, upper.length);
                for (int x = 0; x < width; x++) {
                    // The sum of four has twice the noise of one.
                    into[x + offset] = (upper[2 * x] + upper[2 * x + 1]) / 2;
                }
            };
        }

        private static void sumInto(float[] upper, float[] lower, int length) {
            for (int x = 0; x < length; x++) {
                upper[x] += lower[x];
            }
        }
    }
}
