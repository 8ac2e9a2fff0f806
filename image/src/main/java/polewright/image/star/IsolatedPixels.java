package polewright.image.star;

import polewright.image.Frame;

/**
 * A first, quick look at a peak: where next to all its light is in one pixel no lens was at work. It spares the fits of
 * thousands of hot pixels; what it lets through the fit will judge.
 */
final class IsolatedPixels {
    // Few of a frame's stars have less than this share of the light that the usual one throws on its neighbours.
    private static final double SHARE = 0.35;
    private static final double DOUBT_SIGMAS = 2;

    private final CutoutMaker of;
    private final double neighbours;

    /** @param sharpest a star's image, pixel included */
    IsolatedPixels(CutoutMaker of, StarShape sharpest) {
        this.of = of;
        double beside = Math.exp(-1 / (2 * sharpest.minorVariance()));
        // The eight about a star that stands in the middle of its pixel, over that pixel: least of all places.
        neighbours = SHARE * 4 * (beside + beside * beside);
    }

    /** Index, in the frame, of the one bright pixel that a peak is; −1 where it is more. */
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
