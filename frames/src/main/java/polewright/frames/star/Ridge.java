package polewright.frames.star;

import polewright.frames.Frame;

/**
 * Tells a place on a long line of light, as a satellite, an aeroplane or a bright star's ray draws it, from a star: beyond
 * the star's own width there is as much light again on both sides, in one direction and not across it.
 */
final class Ridge {
    private static final int DIRECTIONS = 16;
    private static final int FINER = 5;
    private static final double NEAREST_SIGMAS = 3.5;
    private static final int SHORT = 8;
    private static final int LONG = 24;
    private static final double CLEAR = 3.5;
    private static final double HINT = 0.8;
    // A line is about as bright on either side as here; a chance neighbour seldom on both.
    private static final double AS_BRIGHT = 0.2;
    // No place on a strip counts for more than this share of the height: a single star on it is no line.
    private static final double MOST_BRIGHT = 0.6;
    private static final double ABOVE_SIDES = 2;

    private final Frame frame;
    private final SkyMesh mesh;
    private final double near;
    private final int half;
    // Mean light of a strip over the light of the ridge's middle.
    private final double share;

    /** @param point shape of a star that did not move */
    Ridge(Frame frame, SkyMesh mesh, StarShape point) {
        this.frame = frame;
        this.mesh = mesh;
        near = NEAREST_SIGMAS * point.sigma();
        half = Math.max(1, (int) Math.round(point.sigma()));
        double width = 2 * half + 1;
        share = point.sigma()
                * Math.sqrt(2 * Math.PI)
                * (2 * NormalDistribution.below(width / 2 / point.sigma()) - 1)
                / width;
    }

    /** Whether light that has this height at a place goes on along a line. */
    boolean passesThrough(double x, double y, double height) {
        double noise = mesh.noiseAt(x, y);
        double sky = mesh.skyAt(x, y);
        double most = MOST_BRIGHT * share * height;
        double step = Math.PI / DIRECTIONS;
        for (int d = 0; d < DIRECTIONS; d++) {
            double hint = HINT * noise / Math.sqrt(SHORT);
            if (strip(x, y, Math.cos(d * step), Math.sin(d * step), SHORT, 0, sky, most) > hint
                    && strip(x, y, -Math.cos(d * step), -Math.sin(d * step), SHORT, 0, sky, most) > hint) {
                for (int f = -FINER / 2; f <= FINER / 2; f++) {
                    double angle = (d + f / (double) FINER) * step;
                    double along = weaker(x, y, angle, LONG, sky, most);
                    if (along > CLEAR * doubt(noise, LONG)
                            && along > AS_BRIGHT * share * height
                            && along > ABOVE_SIDES * weaker(x, y, angle + Math.PI / 2, LONG, sky, most)) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    private double doubt(double noise, int length) {
        return noise / Math.sqrt(length * (2 * half + 1));
    }

    /** Mean light of the weaker of two strips that leave a place in opposite directions. */
    private double weaker(double x, double y, double angle, int length, double sky, double most) {
        double ahead = strip(x, y, Math.cos(angle), Math.sin(angle), length, half, sky, most);
        double behind = strip(x, y, -Math.cos(angle), -Math.sin(angle), length, half, sky, most);
        // Beyond the frame's edge a line may go on or not: the other side alone must tell.
        double weaker = Math.min(ahead, behind);
        return weaker < Double.POSITIVE_INFINITY ? weaker : 0;
    }

    private double strip(double x, double y, double c, double s, int length, int half, double sky, double most) {
        int width = frame.width();
        float[] pixels = frame.pixels();
        double sum = 0;
        int n = 0;
        for (int k = 0; k < length; k++) {
            double across = 0;
            int m = 0;
            for (int w = -half; w <= half; w++) {
                int px = (int) Math.rint(x + c * (near + k) - s * w);
                int py = (int) Math.rint(y + s * (near + k) + c * w);
                if (px >= 0 && py >= 0 && px < width && py < frame.height()) {
                    double light = pixels[py * width + px] - sky;
                    if (Math.abs(light) <= Float.MAX_VALUE) {
                        across += light;
                        m++;
                    }
                }
            }
            if (m > 0) {
                sum += Math.min(most, across / m);
                n++;
            }
        }
        return 2 * n > length ? sum / n : Double.POSITIVE_INFINITY;
    }
}
