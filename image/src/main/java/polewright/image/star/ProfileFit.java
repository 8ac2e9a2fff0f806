package polewright.image.star;

import java.util.Arrays;
import java.util.Optional;

/**
 * Weighted least-squares fit of a star's image to its pixels, by the Levenberg–Marquardt method. With the right weights
 * it is the maximum-likelihood position of the star and reaches the Cramér–Rao bound (Winick 1986, J. Opt. Soc. Am. A
 * 3, 1809).
 *
 * <p>The first three parameters are the centre's x and y and the height. The background is the mesh's: symmetric errors
 * of it do not move the centre. Weights follow the model, not the data, which would favour low pixels.
 */
abstract class ProfileFit {
    static final int X = 0;
    static final int Y = 1;
    static final int HEIGHT = 2;
    private static final int MOST_ROUNDS = 14;
    private static final double MOST_STEP = 1.0;
    // Pixels within about three sigma, and never fewer than three by three.
    private static final double REACH_SQUARE = 10;
    private static final double EXTRA_VARIANCE = 0.35;
    private static final double STILL = 1e-2;
    private static final double MOST_DAMPING = 1e6;
    private static final int MOST_STRANGERS = 4;
    private static final double STRANGE_SIGMAS = 6;
    private static final double SKIRTS = 0.5;
    private static final double UNLIKELY = 3;

    private final Cutout cutout;
    private final NoiseModel law;
    private final int parameters;
    private final int[] column;
    private final int[] row;
    private final double[] light;
    // The number of selected pixels still in use.
    private final int[] live;
    private final double[] weight;
    private final double[] model;
    private final double[] change;
    private final NormalEquations equations;

    /**
     * Selects the pixels.
     *
     * @param x centre of the selection
     * @param y centre of the selection
     * @param mask shape of the part of the cutout that is used
     * @param parameters their number, three or more
     */
    ProfileFit(Cutout cutout, NoiseModel law, double x, double y, StarShape mask, int parameters) {
        this.cutout = cutout;
        this.law = law;
        this.parameters = parameters;
        int all = cutout.width() * cutout.height();
        column = new int[all];
        row = new int[all];
        light = new double[all];
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
                    light[n] = cutout.light(i, j);
                    column[n] = cutout.left() + i;
                    row[n++] = cutout.top() + j;
                }
            }
        }
        live = new int[] {n};
        weight = new double[n];
        model = new double[n];
        change = new double[parameters];
        equations = new NormalEquations(parameters);
    }

    /** The model's light at a distance from the centre. */
    abstract double lightAt(double[] at, double dx, double dy);

    /** Its derivatives with respect to each parameter except the height. */
    abstract void slopesAt(double[] at, double dx, double dy, double light, double[] slopes);

    /** Whether a star could have these parameters. */
    abstract boolean isPlausible(double[] at);

    /** The image with the fitted parameters. */
    abstract StarImage image(double[] at);

    /** Fits the parameters; {@code at} has a first guess of all except the height, and spare elements if needed. */
    Optional<Fit> solve(double[] at) {
        if (live[0] <= parameters) {
            return Optional.empty();
        }
        double startX = at[X];
        double startY = at[Y];
        at[HEIGHT] = firstHeight(at);
        if (!(at[HEIGHT] > 0)) {
            return Optional.empty();
        }
        boolean still = converge(at);
        for (int left = MOST_STRANGERS; still && left > 0 && dropOutlier(at); left--) {
            still = converge(at);
        }
        draw(at);
        updateWeights();
        return result(at, normalEquations(at), startX, startY);
    }

    /** Iterates to convergence; false if the equations are singular. */
    private boolean converge(double[] at) {
        draw(at);
        updateWeights();
        double chiSquare = normalEquations(at);
        double damping = 1e-3;
        double[] trial = new double[at.length];
        boolean still = false;
        for (int round = 0; round < MOST_ROUNDS && !still && damping < MOST_DAMPING; round++) {
            if (!equations.solve(damping, change)) {
                return false;
            }
            step(at, trial);
            if (trial[HEIGHT] > 0 && isPlausible(trial) && chiSquareOf(trial) <= chiSquare * (1 + 1e-9)) {
                double enough = STILL / Math.sqrt(Math.max(equations.information(X), equations.information(Y))) + 1e-5;
                still = Math.abs(change[X]) < enough
                        && Math.abs(change[Y]) < enough
                        && Math.abs(change[HEIGHT]) < STILL * trial[HEIGHT];
                System.arraycopy(trial, 0, at, 0, at.length);
                updateWeights();
                chiSquare = normalEquations(at);
                damping = Math.max(1e-9, damping * 0.1);
            } else {
                damping *= 10;
            }
        }
        draw(at);
        return true;
    }

    /**
     * Drops the pixel on the star's skirts with the largest positive residual, if it is an outlier: a hot pixel, a
     * cosmic ray, a neighbour's edge.
     */
    private boolean dropOutlier(double[] at) {
        int worst = -1;
        double most = STRANGE_SIGMAS;
        for (int k = 0; k < live[0]; k++) {
            double above = (light[k] - model[k]) * Math.sqrt(weight[k]);
            if (above > most && model[k] < SKIRTS * at[HEIGHT]) {
                most = above;
                worst = k;
            }
        }
        if (worst < 0 || live[0] <= parameters + 4) {
            return false;
        }
        int last = --live[0];
        light[worst] = light[last];
        column[worst] = column[last];
        row[worst] = row[last];
        return true;
    }

    /** The residuals of a fit's parameters. */
    Optional<FitResidual> leftover(double[] at) {
        if (live[0] <= parameters + 3) {
            return Optional.empty();
        }
        draw(at);
        updateWeights();
        normalEquations(at);
        if (!equations.invert()) {
            return Optional.empty();
        }
        double[] difference = new double[live[0]];
        double[] leverage = new double[live[0]];
        for (int k = 0; k < live[0]; k++) {
            difference[k] = light[k] - model[k];
            leverage[k] = equations.leverage(k, (pixel, slopes) -> slopes(at, pixel, slopes)) * weight[k];
        }
        return Optional.of(new FitResidual(cutout.skyVariance(), Arrays.copyOf(model, live[0]), difference, leverage));
    }

    /** Best height for the first guess, with equal weights. */
    private double firstHeight(double[] at) {
        at[HEIGHT] = 1;
        draw(at);
        double cross = 0;
        double square = 0;
        for (int k = 0; k < live[0]; k++) {
            cross += model[k] * light[k];
            square += model[k] * model[k];
        }
        return square > 0 ? cross / square : 0;
    }

    private void draw(double[] at) {
        draw(at, column, row, model, live[0]);
    }

    /** Evaluates the light on the first pixels of a list, which are mostly consecutive in rows. */
    void draw(double[] at, int[] column, int[] row, double[] drawn, int pixels) {
        for (int k = 0; k < pixels; k++) {
            drawn[k] = lightAt(at, column[k] - at[X], row[k] - at[Y]);
        }
    }

    /** Weights, one over the variance, from the current model. */
    private void updateWeights() {
        for (int k = 0; k < live[0]; k++) {
            weight[k] = 1 / law.variance(cutout.skyVariance(), model[k]);
        }
    }

    /** Chi square of other parameters with the current weights. */
    private double chiSquareOf(double[] at) {
        draw(at);
        double sum = 0;
        for (int k = 0; k < live[0]; k++) {
            double left = light[k] - model[k];
            sum += left * left * weight[k];
        }
        return sum;
    }

    private void step(double[] at, double[] trial) {
        System.arraycopy(at, 0, trial, 0, at.length);
        double far = Math.max(Math.abs(change[X]), Math.abs(change[Y]));
        double scale = far > MOST_STEP ? MOST_STEP / far : 1;
        for (int p = 0; p < parameters; p++) {
            trial[p] += scale * change[p];
        }
    }

    private void slopes(double[] at, int k, double[] slopes) {
        slopesAt(at, column[k] - at[X], row[k] - at[Y], model[k], slopes);
        slopes[HEIGHT] = model[k] / at[HEIGHT];
    }

    /** Fills the normal equations from the current model; returns its chi square. */
    private double normalEquations(double[] at) {
        return fill(equations, at, live[0], column, row, light, model, weight);
    }

    /** Fills the normal equations pixel by pixel, for a profile without a shortcut; returns chi square. */
    double fill(
            NormalEquations into,
            double[] at,
            int pixels,
            int[] column,
            int[] row,
            double[] light,
            double[] model,
            double[] weight) {
        return into.fill(pixels, (k, slopes) -> slopes(at, k, slopes), light, model, weight);
    }

    private Optional<Fit> result(double[] at, double chiSquare, double startX, double startY) {
        if (!equations.invert()) {
            return Optional.empty();
        }
        StarImage image = image(at);
        // A fit that moved away from its peak has found another star.
        double far = Math.hypot(at[X] - startX, at[Y] - startY);
        if (!(far < 1.5 + 2 * Math.sqrt(image.shape().majorVariance()))) {
            return Optional.empty();
        }
        double square = 0;
        for (int k = 0; k < live[0]; k++) {
            square += model[k] * model[k];
        }
        // If the light does not match the model, perhaps because of a neighbour, the position is less certain in
        // proportion.
        int freedom = live[0] - parameters;
        double misfit = chiSquare / freedom > 1 + UNLIKELY * Math.sqrt(2.0 / freedom) ? chiSquare / freedom : 1;
        return Optional.of(new Fit(
                at[X],
                at[Y],
                image,
                misfit * equations.variance(X),
                misfit * equations.variance(Y),
                Math.sqrt(square / cutout.skyVariance()),
                chiSquare,
                freedom,
                parameters > 3,
                rivals()));
    }

    /** Chi square of the light as one pixel, or two adjacent ones, without a star. */
    private ProfileHypotheses rivals() {
        double total = 0;
        double star = 0;
        double[] weighed = new double[live[0]];
        double one = 0;
        for (int k = 0; k < live[0]; k++) {
            double fair = law.variance(cutout.skyVariance(), Math.max(model[k], light[k]));
            double left = light[k] - model[k];
            star += left * left / fair;
            double here = light[k] * light[k] / fair;
            total += here;
            weighed[k] = light[k] > 0 ? here : 0;
            one = Math.max(one, weighed[k]);
        }
        // No pair is more than twice the best pixel: most stars need no search for it.
        double two = ProfileHypotheses.mayBePair(star, total, one) ? bestPair(weighed, one) : one;
        return new ProfileHypotheses(star, total - one, total - two);
    }

    /** The largest sum of two adjacent pixels. */
    private double bestPair(double[] weighed, double one) {
        double two = one;
        for (int k = 0; k < live[0]; k++) {
            // The brightest pixel of a pair must have at least half of the best sum so far.
            if (weighed[k] > two / 2) {
                for (int i = 0; i < live[0]; i++) {
                    if (i != k && Math.abs(column[i] - column[k]) <= 1 && Math.abs(row[i] - row[k]) <= 1) {
                        two = Math.max(two, weighed[k] + weighed[i]);
                    }
                }
            }
        }
        return two;
    }
}
