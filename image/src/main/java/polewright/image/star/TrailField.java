package polewright.image.star;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The motion of the stars over a frame during the exposure: common to all, a rotation about a point. A stationary
 * camera sees the sky rotate about the pole; far from it the trails are nearly parallel.
 *
 * @param alongX motion at the origin, pixels
 * @param alongY motion at the origin
 * @param turnRad rotation, from +x toward +y
 */
record TrailField(double alongX, double alongY, double turnRad) {
    // A round star's blob is seldom longer than this many times its width; a trail is.
    private static final double LONG = 1.7;
    // Longer trails hold more background than star; such photographs are not supported.
    private static final double LONGEST = 150;
    private static final int FEWEST = 4;
    private static final double SHARE = 0.6;
    private static final int PAIRS_OF = 20;

    double x(double x, double y) {
        return alongX - turnRad * y;
    }

    double y(double x, double y) {
        return alongY + turnRad * x;
    }

    double length(double x, double y) {
        return Math.hypot(x(x, y), y(x, y));
    }

    /** Direction at a position, [0, π). */
    double directionRad(double x, double y) {
        double angle = Math.atan2(y(x, y), x(x, y));
        return angle < 0 ? angle + Math.PI : angle;
    }

    /** Greatest length anywhere in a frame; it is at a corner. */
    double longestIn(int width, int height) {
        return Math.max(Math.max(length(0, 0), length(width, 0)), Math.max(length(0, height), length(width, height)));
    }

    /**
     * The motion shared by most of the blobs; empty if they are round, or long in different directions, as satellites
     * make them.
     */
    static Optional<TrailField> of(List<Blob> blobs, int width, int height) {
        List<Blob> trails =
                blobs.stream().filter(b -> b.shape().elongation() > LONG).toList();
        if (trails.size() < FEWEST || trails.size() < SHARE * blobs.size()) {
            return Optional.empty();
        }
        TrailField best = new TrailField(0, 0, 0);
        int agreeing = 0;
        int few = Math.min(PAIRS_OF, trails.size());
        for (int i = 0; i < few; i++) {
            for (int j = i + 1; j < few; j++) {
                for (int sign = -1; sign <= 1; sign += 2) {
                    TrailField field = through(trails.get(i), trails.get(j), sign);
                    int agree = (int) trails.stream().filter(field::agrees).count();
                    if (agree > agreeing) {
                        agreeing = agree;
                        best = field;
                    }
                }
            }
        }
        if (agreeing < FEWEST || agreeing < SHARE * blobs.size()) {
            return Optional.empty();
        }
        for (int round = 0; round < 3; round++) {
            best = best.through(trails.stream().filter(best::agrees).toList());
        }
        return Optional.of(best).filter(f -> f.longestIn(width, height) < LONGEST);
    }

    /**
     * The motion from some fitted trails, which locate their ends better than blobs do; this field itself if they are
     * few.
     */
    TrailField refined(List<Fit> fits) {
        List<Fit> agreeing = fits.stream()
                .filter(f ->
                        f.image() instanceof StarImage.Trail t && agrees(f.x(), f.y(), t.length(), t.directionRad()))
                .toList();
        if (agreeing.size() < FEWEST) {
            return this;
        }
        return through(
                agreeing.stream().mapToDouble(Fit::x).toArray(),
                agreeing.stream().mapToDouble(Fit::y).toArray(),
                agreeing.stream()
                        .mapToDouble(f -> trail(f).length() * Math.cos(trail(f).directionRad()))
                        .toArray(),
                agreeing.stream()
                        .mapToDouble(f -> trail(f).length() * Math.sin(trail(f).directionRad()))
                        .toArray());
    }

    private static StarImage.Trail trail(Fit fit) {
        return (StarImage.Trail) fit.image();
    }

    private TrailField through(List<Blob> trails) {
        return through(
                trails.stream().mapToDouble(Blob::x).toArray(),
                trails.stream().mapToDouble(Blob::y).toArray(),
                trails.stream()
                        .mapToDouble(b -> b.length() * Math.cos(b.shape().longAxisRad()))
                        .toArray(),
                trails.stream()
                        .mapToDouble(b -> b.length() * Math.sin(b.shape().longAxisRad()))
                        .toArray());
    }

    /** Least squares, with the sense of each motion chosen to agree with this field. */
    private TrailField through(double[] x, double[] y, double[] u, double[] v) {
        double[] senseU = new double[x.length];
        double[] senseV = new double[x.length];
        for (int k = 0; k < x.length; k++) {
            double sense = u[k] * x(x[k], y[k]) + v[k] * y(x[k], y[k]) < 0 ? -1 : 1;
            senseU[k] = sense * u[k];
            senseV[k] = sense * v[k];
        }
        return leastSquares(x, y, senseU, senseV);
    }

    private static TrailField through(Blob a, Blob b, int sign) {
        return leastSquares(
                new double[] {a.x(), b.x()},
                new double[] {a.y(), b.y()},
                new double[] {
                    a.length() * Math.cos(a.shape().longAxisRad()),
                    sign * b.length() * Math.cos(b.shape().longAxisRad())
                },
                new double[] {
                    a.length() * Math.sin(a.shape().longAxisRad()),
                    sign * b.length() * Math.sin(b.shape().longAxisRad())
                });
    }

    private static TrailField leastSquares(double[] x, double[] y, double[] u, double[] v) {
        double mx = Arrays.stream(x).average().orElse(0);
        double my = Arrays.stream(y).average().orElse(0);
        double mu = Arrays.stream(u).average().orElse(0);
        double mv = Arrays.stream(v).average().orElse(0);
        double cross = 0;
        double square = 0;
        for (int k = 0; k < x.length; k++) {
            cross += (x[k] - mx) * v[k] - (y[k] - my) * u[k];
            square += (x[k] - mx) * (x[k] - mx) + (y[k] - my) * (y[k] - my);
        }
        double turn = square > 0 ? cross / square : 0;
        return new TrailField(mu + turn * my, mv - turn * mx, turn);
    }

    private boolean agrees(Blob blob) {
        return agrees(blob.x(), blob.y(), blob.length(), blob.shape().longAxisRad());
    }

    /** Whether a trail has the length and direction of this field. */
    private boolean agrees(double x, double y, double length, double directionRad) {
        double tx = x(x, y);
        double ty = y(x, y);
        double u = length * Math.cos(directionRad);
        double v = length * Math.sin(directionRad);
        double off = Math.min(Math.hypot(tx - u, ty - v), Math.hypot(tx + u, ty + v));
        return off < 1 + 0.25 * Math.hypot(tx, ty);
    }
}
