package polewright.frames.star;

import java.util.Optional;

/**
 * Weighted least squares of a Gaussian through a star's pixels, by Levenberg and Marquardt's way. With the right weights
 * it is the most likely place of the star and reaches the Cramér–Rao bound (Winick 1986, J. Opt. Soc. Am. A 3, 1809).
 *
 * <p>Parameters: centre x and y, height, and where the shape is free the three elements of its inverse. The sky is the
 * mesh's: symmetric errors of it do not move the centre. Weights follow the model, not the data, which would favour low
 * pixels.
 */
final class GaussianFit {
    private static final int MOST_ROUNDS = 14;
    private static final double MOST_STEP = 1.0;
    private static final double REACH_SQUARE = 10;
    private static final double EXTRA_VARIANCE = 0.35;
    private static final double STILL = 1e-3;
    // Sharper than a third of a pixel is not light that passed a lens.
    private static final double LEAST_VARIANCE = 0.05;
    private static final double MOST_VARIANCE = 2500;

    private final Cutout cutout;
    private final NoiseLaw law;
    private final int parameters;
    private final int[] column;
    private final int[] row;
    private final int pixels;
    private final double[] variance;
    private final double[] model;
    private final double[] normal;
    private final double[] gradient;
    private final double[] change;
    private final CholeskySolver solver;

    private GaussianFit(Cutout cutout, NoiseLaw law, double x, double y, StarShape mask, boolean freeShape) {
        this.cutout = cutout;
        this.law = law;
        parameters = freeShape ? 6 : 3;
        int all = cutout.width() * cutout.height();
        column = new int[all];
        row = new int[all];
        int n = 0;
        double xx = mask.xx() + EXTRA_VARIANCE;
        double yy = mask.yy() + EXTRA_VARIANCE;
        double det = xx * yy - mask.xy() * mask.xy();
        for (int j = 0; j < cutout.height(); j++) {
            double dy = cutout.top() + j - y;
            for (int i = 0; i < cutout.width(); i++) {
                double dx = cutout.left() + i - x;
                double q = (yy * dx * dx - 2 * mask.xy() * dx * dy + xx * dy * dy) / det;
                if (q <= REACH_SQUARE && cutout.counts(i, j)) {
                    column[n] = i;
                    row[n++] = j;
                }
            }
        }
        pixels = n;
        variance = new double[n];
        model = new double[n];
        normal = new double[parameters * parameters];
        gradient = new double[parameters];
        change = new double[parameters];
        solver = new CholeskySolver(parameters);
    }

    /**
     * Fits a star.
     *
     * @param x first guess of the column; the pixels that count lie about it
     * @param y first guess of the row
     * @param shape first guess of the shape, or the shape itself
     * @param freeShape whether the shape is to be found too
     * @return empty where nothing like a star can be laid through the pixels
     */
    static Optional<Fit> of(Cutout cutout, double x, double y, StarShape shape, boolean freeShape, NoiseLaw law) {
        GaussianFit fit = new GaussianFit(cutout, law, x, y, shape, freeShape);
        return fit.pixels > fit.parameters ? fit.solve(x, y, shape) : Optional.empty();
    }

    /** What a star's fit leaves over. */
    static Optional<Leftover> leftover(Cutout cutout, Fit star, NoiseLaw law) {
        GaussianFit fit = new GaussianFit(cutout, law, star.x(), star.y(), star.shape(), star.freeShape());
        return fit.pixels > fit.parameters + 3 ? fit.leftover(star) : Optional.empty();
    }

    private Optional<Leftover> leftover(Fit star) {
        double[] at = parametersOf(star.x(), star.y(), star.height(), star.shape());
        weigh(at);
        evaluate(at);
        if (!solver.factor(normal, 0)) {
            return Optional.empty();
        }
        double[] difference = new double[pixels];
        double[] leverage = new double[pixels];
        double[] slope = new double[parameters];
        for (int k = 0; k < pixels; k++) {
            double dx = cutout.left() + column[k] - at[0];
            double dy = cutout.top() + row[k] - at[1];
            double m = model[k];
            slope[0] = m * (at[3] * dx + at[4] * dy);
            slope[1] = m * (at[4] * dx + at[5] * dy);
            slope[2] = m / at[2];
            if (parameters == 6) {
                slope[3] = -m * dx * dx / 2;
                slope[4] = -m * dx * dy;
                slope[5] = -m * dy * dy / 2;
            }
            difference[k] = cutout.light(column[k], row[k]) - m;
            leverage[k] = solver.quadratic(slope) / variance[k];
        }
        return Optional.of(new Leftover(cutout.skyVariance(), model.clone(), difference, leverage));
    }

    private static double[] parametersOf(double x, double y, double height, StarShape shape) {
        double det = shape.determinant();
        return new double[] {x, y, height, shape.yy() / det, -shape.xy() / det, shape.xx() / det};
    }

    private Optional<Fit> solve(double x, double y, StarShape shape) {
        double[] at = parametersOf(x, y, 1, shape);
        at[2] = firstHeight(at);
        if (!(at[2] > 0)) {
            return Optional.empty();
        }
        weigh(at);
        double damping = 1e-3;
        double chiSquare = evaluate(at);
        double[] trial = new double[6];
        boolean still = false;
        for (int round = 0; round < MOST_ROUNDS && !still; round++) {
            if (!solver.solve(normal, gradient, damping, change)) {
                return Optional.empty();
            }
            double[] held = normal.clone();
            double[] heldGradient = gradient.clone();
            boolean usable = step(at, trial);
            double next = usable ? evaluate(trial) : Double.POSITIVE_INFINITY;
            if (next <= chiSquare * (1 + 1e-9)) {
                still = Math.abs(change[0]) < STILL * Math.sqrt(held[0] > 0 ? 1 / held[0] : 1) + 1e-5
                        && Math.abs(change[1]) < STILL * Math.sqrt(held[0] > 0 ? 1 / held[0] : 1) + 1e-5
                        && Math.abs(change[2]) < 1e-3 * trial[2];
                System.arraycopy(trial, 0, at, 0, 6);
                weigh(at);
                chiSquare = evaluate(at);
                damping = Math.max(1e-9, damping * 0.1);
            } else {
                System.arraycopy(held, 0, normal, 0, held.length);
                System.arraycopy(heldGradient, 0, gradient, 0, heldGradient.length);
                damping *= 10;
                if (damping > 1e6) {
                    break;
                }
            }
        }
        return result(at, x, y);
    }

    /** Best height for the first guess, all pixels weighing alike. */
    private double firstHeight(double[] at) {
        double cross = 0;
        double square = 0;
        for (int k = 0; k < pixels; k++) {
            double g = gaussian(at, cutout.left() + column[k] - at[0], cutout.top() + row[k] - at[1]);
            cross += g * cutout.light(column[k], row[k]);
            square += g * g;
        }
        return square > 0 ? cross / square : 0;
    }

    private static double gaussian(double[] at, double dx, double dy) {
        double q = at[3] * dx * dx + 2 * at[4] * dx * dy + at[5] * dy * dy;
        return q < 60 ? Math.exp(-q / 2) : 0;
    }

    private void weigh(double[] at) {
        for (int k = 0; k < pixels; k++) {
            double m = at[2] * gaussian(at, cutout.left() + column[k] - at[0], cutout.top() + row[k] - at[1]);
            variance[k] = law.variance(cutout.skyVariance(), m);
        }
    }

    /** The parameters after a change; false where they would be no star's. */
    private boolean step(double[] at, double[] trial) {
        System.arraycopy(at, 0, trial, 0, 6);
        double far = Math.max(Math.abs(change[0]), Math.abs(change[1]));
        double scale = far > MOST_STEP ? MOST_STEP / far : 1;
        for (int p = 0; p < parameters; p++) {
            trial[p] += scale * change[p];
        }
        double det = trial[3] * trial[5] - trial[4] * trial[4];
        return trial[2] > 0
                && trial[3] > 0
                && trial[5] > 0
                && det > 0
                && trial[3] / det < MOST_VARIANCE
                && trial[5] / det < MOST_VARIANCE
                && Math.max(trial[3], trial[5]) < 1 / LEAST_VARIANCE;
    }

    /** Chi square of the parameters; fills the normal equations. */
    private double evaluate(double[] at) {
        java.util.Arrays.fill(normal, 0);
        java.util.Arrays.fill(gradient, 0);
        double chiSquare = 0;
        double a = at[3];
        double b = at[4];
        double c = at[5];
        for (int k = 0; k < pixels; k++) {
            double dx = cutout.left() + column[k] - at[0];
            double dy = cutout.top() + row[k] - at[1];
            double g = gaussian(at, dx, dy);
            double m = at[2] * g;
            model[k] = m;
            double weight = 1 / variance[k];
            double left = cutout.light(column[k], row[k]) - m;
            chiSquare += left * left * weight;
            double d0 = m * (a * dx + b * dy);
            double d1 = m * (b * dx + c * dy);
            double wl = weight * left;
            gradient[0] += d0 * wl;
            gradient[1] += d1 * wl;
            gradient[2] += g * wl;
            int n = parameters;
            normal[0] += weight * d0 * d0;
            normal[n] += weight * d1 * d0;
            normal[n + 1] += weight * d1 * d1;
            normal[2 * n] += weight * g * d0;
            normal[2 * n + 1] += weight * g * d1;
            normal[2 * n + 2] += weight * g * g;
            if (n == 6) {
                double d3 = -m * dx * dx / 2;
                double d4 = -m * dx * dy;
                double d5 = -m * dy * dy / 2;
                gradient[3] += d3 * wl;
                gradient[4] += d4 * wl;
                gradient[5] += d5 * wl;
                double w3 = weight * d3;
                double w4 = weight * d4;
                double w5 = weight * d5;
                normal[18] += w3 * d0;
                normal[19] += w3 * d1;
                normal[20] += w3 * g;
                normal[21] += w3 * d3;
                normal[24] += w4 * d0;
                normal[25] += w4 * d1;
                normal[26] += w4 * g;
                normal[27] += w4 * d3;
                normal[28] += w4 * d4;
                normal[30] += w5 * d0;
                normal[31] += w5 * d1;
                normal[32] += w5 * g;
                normal[33] += w5 * d3;
                normal[34] += w5 * d4;
                normal[35] += w5 * d5;
            }
        }
        return chiSquare;
    }

    private Optional<Fit> result(double[] at, double startX, double startY) {
        double chiSquare = evaluate(at);
        if (!solver.factor(normal, 0)) {
            return Optional.empty();
        }
        double det = at[3] * at[5] - at[4] * at[4];
        StarShape shape = new StarShape(at[5] / det, -at[4] / det, at[3] / det);
        double area = 2 * Math.PI / Math.sqrt(det);
        double square = 0;
        for (int k = 0; k < pixels; k++) {
            square += model[k] * model[k];
        }
        // A star that ran away from its peak is another's.
        double far = Math.hypot(at[0] - startX, at[1] - startY);
        if (!(far < 1.5 + 2 * shape.sigma())) {
            return Optional.empty();
        }
        return Optional.of(new Fit(
                at[0],
                at[1],
                at[2],
                shape,
                solver.inverse(0, 0),
                solver.inverse(1, 1),
                at[2] * area,
                Math.sqrt(square / cutout.skyVariance()),
                chiSquare,
                pixels - parameters,
                parameters == 6));
    }
}
