package polewright.image.match;

import polewright.image.star.FoundStar;
import polewright.image.star.StarList;

/** The brightest stars of a frame as columns, brightest first; x is counted from the right if mirrored. */
final class Detections {
    // Centres are never assumed to be better than this, because of the optics' irregularities.
    private static final double LEAST_SIGMA_PIXELS = 0.03;

    private final int width;
    private final int height;
    private final int count;
    private final double[] x;
    private final double[] y;
    private final double[] flux;
    private final double[] sigma;

    Detections(StarList list, int most) {
        width = list.width();
        height = list.height();
        count = Math.min(most, list.size());
        x = new double[count];
        y = new double[count];
        flux = new double[count];
        sigma = new double[count];
        for (int i = 0; i < count; i++) {
            FoundStar star = list.stars().get(i);
            x[i] = star.x();
            y[i] = star.y();
            flux[i] = star.flux();
            double square = (star.sigmaX() * star.sigmaX() + star.sigmaY() * star.sigmaY()) / 2;
            sigma[i] = Math.sqrt(square + LEAST_SIGMA_PIXELS * LEAST_SIGMA_PIXELS);
        }
    }

    int width() {
        return width;
    }

    int height() {
        return height;
    }

    int count() {
        return count;
    }

    double x(int index) {
        return x[index];
    }

    double y(int index) {
        return y[index];
    }

    double flux(int index) {
        return flux[index];
    }

    /** 1 sigma of a coordinate, pixels. */
    double sigma(int index) {
        return sigma[index];
    }

    double halfDiagonal() {
        return Math.hypot(width, height) / 2;
    }
}
