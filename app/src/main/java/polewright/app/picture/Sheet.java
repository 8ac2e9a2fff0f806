package polewright.app.picture;

import java.awt.geom.Point2D;
import java.awt.image.BufferedImage;
import polewright.frames.Frame;
import polewright.frames.decode.RowOrder;
import polewright.frames.match.PixelPlace;

/**
 * Where each pixel of a frame stands on the picture.
 *
 * @param frameWidth columns of the frame
 * @param frameHeight rows of it
 * @param rows how the frame is drawn
 * @param perPixel picture's points to one pixel of the frame
 */
record Sheet(int frameWidth, int frameHeight, RowOrder rows, double perPixel) {
    /** The longer side of the picture: on a phone its letters are still to be read. */
    private static final int LONGER_SIDE = 1200;

    static Sheet of(int frameWidth, int frameHeight, RowOrder rows) {
        return new Sheet(frameWidth, frameHeight, rows, (double) LONGER_SIDE / Math.max(frameWidth, frameHeight));
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

    /** The frame in shades of grey, each point after the pixels under it. */
    BufferedImage grey(Frame frame) {
        Stretch stretch = Stretch.of(frame);
        BufferedImage image = new BufferedImage(width(), height(), BufferedImage.TYPE_INT_RGB);
        for (int row = 0; row < height(); row++) {
            int below = height() - 1 - row;
            int stored = rows == RowOrder.BOTTOM_UP ? below : row;
            for (int column = 0; column < width(); column++) {
                double shade = stretch.shade(level(frame, column, stored));
                int level = (int) Math.round(shade * 225);
                image.setRGB(column, row, level << 16 | level << 8 | Math.min(255, level + 6));
            }
        }
        return image;
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
        // Between the mean, in which a star of one pixel is lost, and the brightest, which is mostly noise.
        return count == 0 ? Double.NaN : (sum / count + most) / 2;
    }
}
