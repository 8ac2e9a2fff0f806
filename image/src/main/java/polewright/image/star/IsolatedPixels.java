package polewright.image.star;

import polewright.image.Frame;

/**
 * A quick first check of a peak: if nearly all its light is in one pixel, it did not pass the optics. It avoids the
 * fits of thousands of hot pixels; what passes is judged by its fit.
 */
final class IsolatedPixels {
    // Few of a frame's stars have less than this fraction of the typical star's light on their neighbouring pixels.
    private static final double SHARE = 0.35;
    private static final double DOUBT_SIGMAS = 2;

    private final CutoutMaker of;
    private final double neighbours;

    /** @param sharpest a star's image, pixel included */
    IsolatedPixels(CutoutMaker of, StarShape sharpest) {
        this.of = of;
        double beside = Math.exp(-1 / (2 * sharpest.minorVariance()));
        // The eight around a star centred on its pixel, relative to that pixel: the smallest ratio of all positions.
        neighbours = SHARE * 4 * (beside + beside * beside);
    }

    /** Index, in the frame, of the single bright pixel of a peak; −1 if there is more. */
    int find(Peak peak) {
        Frame frame = of.frame();
        int width = frame.width();
        float[] pixels = frame.pixels();
        if (peak.x() < 2 || peak.y() < 2 || peak.x() >= width - 2 || peak.y() >= frame.height() - 2) {
            return -1;
        }
        int top = peak.y() * width + peak.x();
        for (int j = -1; j <= 1; j++) {
            for (int i = -1; i <= 1; i++) {
                int k = (peak.y() + j) * width + peak.x() + i;
                top = pixels[k] > pixels[top] ? k : top;
            }
        }
        double sky = of.mesh().skyAt(peak.x(), peak.y());
        double noise = of.mesh().noiseAt(peak.x(), peak.y()) * of.sharedNoise();
        double light = pixels[top] - sky;
        double beside = -light;
        for (int j = -1; j <= 1; j++) {
            for (int i = -1; i <= 1; i++) {
                beside += pixels[top + j * width + i] - sky;
            }
        }
        return beside + DOUBT_SIGMAS * Math.sqrt(8) * noise < neighbours * light ? top : -1;
    }
}
