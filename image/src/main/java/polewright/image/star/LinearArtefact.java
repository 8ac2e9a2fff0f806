package polewright.image.star;

import polewright.image.Frame;

/**
 * Distinguishes stars from positions on a long line of light, such as a satellite's or aeroplane's trail or a
 * diffraction spike: beyond the star's own width there is similar light on both sides, in one direction and not across
 * it.
 */
final class LinearArtefact {
    private static final int DIRECTIONS = 16;
    private static final int FINER = 5;
    private static final int HALF_TURN = DIRECTIONS * FINER;
    // For every direction that is used.
    private static final double[] COS = new double[2 * HALF_TURN];
    private static final double[] SIN = new double[2 * HALF_TURN];

    static {
        for (int angle = 0; angle < COS.length; angle++) {
            COS[angle] = Math.cos(Math.PI * angle / HALF_TURN);
            SIN[angle] = Math.sin(Math.PI * angle / HALF_TURN);
        }
    }

    private static final double NEAREST_SIGMAS = 3.5;
    private static final int SHORT = 8;
    private static final int LONG = 24;
    private static final double CLEAR = 3.5;
    private static final double HINT = 0.8;
    // A line is about as bright on either side as here; a chance neighbour seldom on both.
    private static final double AS_BRIGHT = 0.2;
    // No position on a strip counts for more than this fraction of the height: a single star on it is not a line.
    private static final double MOST_BRIGHT = 0.6;
    private static final double ABOVE_SIDES = 2;

    private final Frame frame;
    private final BackgroundMesh mesh;
    private final PsfEstimate usual;
    private final int half;
    // Mean light of a strip relative to the light of the ridge's middle.
    private final double share;

    LinearArtefact(Frame frame, BackgroundMesh mesh, PsfEstimate usual) {
        this.frame = frame;
        this.mesh = mesh;
        this.usual = usual;
        StarShape point = usual.point();
        half = Math.max(1, (int) Math.round(point.sigma()));
        double width = 2 * half + 1;
        share = point.sigma()
                * Math.sqrt(2 * Math.PI)
                * (2 * NormalDistribution.below(width / 2 / point.sigma()) - 1)
                / width;
    }

    /** Whether light of this height at a position continues along a line. */
    boolean passesThrough(double x, double y, double height) {
        return new Place(x, y, height).isOnLine();
    }

    /** One position, its light, and the strips that leave it beyond the reach of a star there. */
    private final class Place {
        private final double x;
        private final double y;
        private final double height;
        private final double sky;
        private final double noise;
        private final double halfTrailX;
        private final double halfTrailY;

        Place(double x, double y, double height) {
            this.x = x;
            this.y = y;
            this.height = height;
            sky = mesh.skyAt(x, y);
            noise = mesh.noiseAt(x, y);
            halfTrailX = usual.trail().map(t -> t.x(x, y) / 2).orElse(0.0);
            halfTrailY = usual.trail().map(t -> t.y(x, y) / 2).orElse(0.0);
        }

        boolean isOnLine() {
            double hint = HINT * noise / Math.sqrt(SHORT);
            for (int d = 0; d < DIRECTIONS; d++) {
                int angle = d * FINER;
                if (strip(angle, SHORT, 0) > hint && strip(angle + HALF_TURN, SHORT, 0) > hint) {
                    for (int f = -FINER / 2; f <= FINER / 2; f++) {
                        if (continues(angle + f)) {
                            return true;
                        }
                    }
                }
            }
            return false;
        }

        private boolean continues(int angle) {
            double doubt = noise / Math.sqrt(LONG * (2 * half + 1));
            double least = Math.max(CLEAR * doubt, AS_BRIGHT * share * height);
            double one = strip(angle, LONG, half);
            // Most directions end here, before the other side is examined.
            if (!(one > least)) {
                return false;
            }
            double along = weaker(one, strip(angle + HALF_TURN, LONG, half));
            return along > least && along > ABOVE_SIDES * besides(angle + HALF_TURN / 2);
        }

        private double besides(int angle) {
            return weaker(strip(angle, LONG, half), strip(angle + HALF_TURN, LONG, half));
        }

        /** Mean light of the weaker of two strips in opposite directions. */
        private static double weaker(double one, double other) {
            double weaker = Math.min(one, other);
            // A line may or may not continue beyond the frame's edge: the other side alone decides.
            return weaker < Double.POSITIVE_INFINITY ? weaker : 0;
        }

        /** Mean light of a few pixels across a strip; NaN if there are none. */
        private double across(double cx, double cy, double c, double s, int halfWidth) {
            int width = frame.width();
            float[] pixels = frame.pixels();
            if (halfWidth == 0) {
                // A single pixel, the most frequent case.
                int px = (int) Math.rint(cx);
                int py = (int) Math.rint(cy);
                boolean inside = px >= 0 && py >= 0 && px < width && py < frame.height();
                return inside ? pixels[py * width + px] - sky : Double.NaN;
            }
            double sum = 0;
            int n = 0;
            for (int w = -halfWidth; w <= halfWidth; w++) {
                int px = (int) Math.rint(cx - s * w);
                int py = (int) Math.rint(cy + c * w);
                if (px >= 0 && py >= 0 && px < width && py < frame.height()) {
                    double light = pixels[py * width + px] - sky;
                    if (Math.abs(light) <= Float.MAX_VALUE) {
                        sum += light;
                        n++;
                    }
                }
            }
            return sum / n;
        }

        /** Mean light of a strip; infinite if most of it is out of the frame. */
        private double strip(int angle, int length, int halfWidth) {
            double c = COS[Math.floorMod(angle, COS.length)];
            double s = SIN[Math.floorMod(angle, SIN.length)];
            double near = NEAREST_SIGMAS * usual.point().sigma() + Math.abs(c * halfTrailX + s * halfTrailY);
            double most = MOST_BRIGHT * share * height;
            double sum = 0;
            int n = 0;
            for (int k = 0; k < length; k++) {
                double across = across(x + c * (near + k), y + s * (near + k), c, s, halfWidth);
                if (across > Double.NEGATIVE_INFINITY) {
                    sum += Math.min(most, across);
                    n++;
                }
            }
            return 2 * n > length ? sum / n : Double.POSITIVE_INFINITY;
        }
    }
}
