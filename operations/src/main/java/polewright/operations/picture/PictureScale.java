package polewright.operations.picture;

import java.awt.geom.Point2D;
import java.util.stream.IntStream;
import polewright.image.Frame;
import polewright.image.decode.RowOrder;
import polewright.image.match.PixelPlace;

/**
 * Maps the pixels of a frame to points of the picture.
 *
 * @param frameWidth columns of the frame
 * @param frameHeight rows of the frame
 * @param rows the row order in which it is drawn
 * @param perPixel points of the picture per pixel of the frame
 */
record PictureScale(int frameWidth, int frameHeight, RowOrder rows, double perPixel) {
    /** The longer side of a file: its letters must be legible on a phone. */
    private static final int LONGER_SIDE = 1200;

    static PictureScale forFile(int frameWidth, int frameHeight, RowOrder rows) {
        return new PictureScale(
                frameWidth, frameHeight, rows, (double) LONGER_SIDE / Math.max(frameWidth, frameHeight));
    }

    /** For a screen: no wider than this, and never larger than the frame. */
    static PictureScale forScreen(int frameWidth, int frameHeight, RowOrder rows, int mostWide) {
        return new PictureScale(frameWidth, frameHeight, rows, Math.min(1, (double) mostWide / frameWidth));
    }

    int width() {
        return (int) Math.max(1, Math.round(frameWidth * perPixel));
    }

    int height() {
        return (int) Math.max(1, Math.round(frameHeight * perPixel));
    }

    Point2D point(PixelPlace place) {
        return point(place.x(), place.y());
    }

    Point2D point(double x, double y) {
        double fromTop = rows == RowOrder.BOTTOM_UP ? frameHeight - 1 - y : y;
        return new Point2D.Double((x + 0.5) * perPixel, (fromTop + 0.5) * perPixel);
    }

    boolean holds(Point2D point) {
        return point.getX() >= 0 && point.getX() <= width() && point.getY() >= 0 && point.getY() <= height();
    }

    /** The frame in shades from 0, the background, to 255, the brightest; row by row. */
    byte[] shades(Frame frame, Stretch stretch) {
        byte[] shades = new byte[width() * height()];
        IntStream.range(0, height()).parallel().forEach(row -> {
            int stored = stored(row);
            for (int column = 0; column < width(); column++) {
                double shade = stretch.shade(level(frame, column, stored));
                shades[row * width() + column] = (byte) Math.round(shade * 255);
            }
        });
        return shades;
    }

    private int stored(int row) {
        return rows == RowOrder.BOTTOM_UP ? height() - 1 - row : row;
    }

    private double level(Frame frame, int column, int row) {
        int left = (int) (column / perPixel);
        int top = (int) (row / perPixel);
        int right = Math.min(frameWidth, Math.max(left + 1, (int) ((column + 1) / perPixel)));
        int bottom = Math.min(frameHeight, Math.max(top + 1, (int) ((row + 1) / perPixel)));
        double sum = 0;
        double most = Double.NEGATIVE_INFINITY;
        int count = 0;
        for (int y = top; y < bottom; y++) {
            for (int x = left; x < right; x++) {
                float value = frame.pixels()[y * frameWidth + x];
                if (Float.isFinite(value)) {
                    sum += value;
                    most = Math.max(most, value);
                    count++;
                }
            }
        }
        // Between the mean, in which a star of one pixel is lost, and the maximum, which is mostly noise.
        return count == 0 ? Double.NaN : (sum / count + most) / 2;
    }
}
