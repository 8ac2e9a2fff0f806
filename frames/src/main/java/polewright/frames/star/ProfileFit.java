package polewright.frames.star;

import java.util.Arrays;
import java.util.Optional;

/**
 * Weighted least squares of a star's image through its pixels, by Levenberg and Marquardt's way. With the right weights
 * it is the most likely place of the star and reaches the Cramér–Rao bound (Winick 1986, J. Opt. Soc. Am. A 3, 1809).
 *
 * <p>The first three parameters are the centre's x and y and the height. The sky is the mesh's: symmetric errors of it do
 * not move the centre. Weights follow the model, not the data, which would favour low pixels.
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
    private final NoiseLaw law;
    private final int parameters;
    private final int[] column;
    private final int[] row;
    private final double[] light;
    // How many of the pixels picked still count.
    private final int[] live;
    private final double[] variance;
    private final double[] model;
    private final double[] normal;
    private final double[] gradient;
    private final double[] change;
    private final double[] slopes;
    private final CholeskySolver solver;

    /**
     * Picks the pixels that count.
     *
     * @param x about which they lie
     * @param y about which they lie
     * @param mask shape of the part of the cutout that is used
     * @param parameters to be found, three or more
     */
    ProfileFit(Cutout cutout, NoiseLaw law, double x, double y, StarShape mask, int parameters) {
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
        variance = new double[n];
        model = new double[n];
        normal = new double[parameters * parameters];
        gradient = new double[parameters];
        change = new double[parameters];
        slopes = new double[parameters];
        solver = new CholeskySolver(parameters);
    }

    /** The light that parameters draw at a distance from the centre. */
    abstract double lightAt(double[] at, double dx, double dy);

    /** How that light changes with each parameter but the height. */
    abstract void slopesAt(double[] at, double dx, double dy, double light, double[] slopes);

    /** Whether a star could have these parameters. */
    abstract boolean isPlausible(double[] at);

    /** The image that the parameters found draw. */
    abstract StarImage image(double[] at);

    /** Finds the parameters; {@code at} has a first guess of all but the height, and more room where it needs it. */
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
        for (int left = MOST_STRANGERS; still && left > 0 && dropStranger(at); left--) {
            still = converge(at);
        }
        draw(at);
        weigh();
        return result(at, normalEquations(at), startX, startY);
    }

    /** Goes downhill until nothing changes; false where the equations have no answer. */
    private boolean converge(double[] at) {
        draw(at);
        weigh();
        double chiSquare = normalEquations(at);
        double damping = 1e-3;
        double[] trial = new double[at.length];
        boolean still = false;
        for (int round = 0; round < MOST_ROUNDS && !still && damping < MOST_DAMPING; round++) {
            if (!solver.solve(normal, gradient, damping, change)) {
                return false;
            }
            step(at, trial);
            if (trial[HEIGHT] > 0 && isPlausible(trial) && chiSquareOf(trial) <= chiSquare * (1 + 1e-9)) {
                double enough = STILL / Math.sqrt(Math.max(normal[0], normal[parameters + 1])) + 1e-5;
                still = Math.abs(change[X]) < enough
                        && Math.abs(change[Y]) < enough
                        && Math.abs(change[HEIGHT]) < STILL * trial[HEIGHT];
                System.arraycopy(trial, 0, at, 0, at.length);
                weigh();
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
     * Takes out the pixel on the star's skirts that stands highest above the fit, if it stands far above it: a hot pixel, a
     * cosmic ray, a neighbour's edge.
     */
    private boolean dropStranger(double[] at) {
        int worst = -1;
        double most = STRANGE_SIGMAS;
        for (int k = 0; k < live[0]; k++) {
            double above = (light[k] - model[k]) / Math.sqrt(variance[k]);
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

    /** What the parameters of a fit leave over. */
    Optional<Leftover> leftover(double[] at) {
        if (live[0] <= parameters + 3) {
            return Optional.empty();
        }
        draw(at);
        weigh();
        normalEquations(at);
        if (!solver.factor(normal, 0)) {
            return Optional.empty();
        }
        double[] difference = new double[live[0]];
        double[] leverage = new double[live[0]];
        for (int k = 0; k < live[0]; k++) {
            slopes(at, k);
            difference[k] = light[k] - model[k];
            leverage[k] = solver.quadratic(slopes) / variance[k];
        }
        return Optional.of(new Leftover(cutout.skyVariance(), Arrays.copyOf(model, live[0]), difference, leverage));
    }

    /** Best height for the first guess, all pixels weighing alike. */
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
        for (int k = 0; k < live[0]; k++) {
            model[k] = lightAt(at, column[k] - at[X], row[k] - at[Y]);
        }
    }

    /** Variances by the model as it stands. */
    private void weigh() {
        for (int k = 0; k < live[0]; k++) {
            variance[k] = law.variance(cutout.skyVariance(), model[k]);
        }
    }

    /** Chi square of other parameters, by the variances as they stand. */
    private double chiSquareOf(double[] at) {
        draw(at);
        double sum = 0;
        for (int k = 0; k < live[0]; k++) {
            double left = light[k] - model[k];
            sum += left * left / variance[k];
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

    private void slopes(double[] at, int k) {
        slopesAt(at, column[k] - at[X], row[k] - at[Y], model[k], slopes);
        slopes[HEIGHT] = model[k] / at[HEIGHT];
    }

    /** Fills the normal equations from the model as it stands; chi square of it. */
    private double normalEquations(double[] at) {
        return parameters == 6 ? normalEquationsOfSix(at) : normalEquationsOfThree(at);
    }

    // Written out: with arrays and loops in their place this, where most of a fit's time goes, takes three times
    // longer.
    private double normalEquationsOfSix(double[] at) {
        double chiSquare = 0;
        double g0 = 0;
        double g1 = 0;
        double g2 = 0;
        double g3 = 0;
        double g4 = 0;
        double g5 = 0;
        double n00 = 0;
        double n10 = 0;
        double n11 = 0;
        double n20 = 0;
        double n21 = 0;
        double n22 = 0;
        double n30 = 0;
        double n31 = 0;
        double n32 = 0;
        double n33 = 0;
        double n40 = 0;
        double n41 = 0;
        double n42 = 0;
        double n43 = 0;
        double n44 = 0;
        double n50 = 0;
        double n51 = 0;
        double n52 = 0;
        double n53 = 0;
        double n54 = 0;
        double n55 = 0;
        for (int k = 0; k < live[0]; k++) {
            slopes(at, k);
            double weight = 1 / variance[k];
            double left = light[k] - model[k];
            chiSquare += left * left * weight;
            double s0 = slopes[0];
            double w0 = weight * s0;
            g0 += w0 * left;
            n00 += w0 * s0;
            double s1 = slopes[1];
            double w1 = weight * s1;
            g1 += w1 * left;
            n10 += w1 * s0;
            n11 += w1 * s1;
            double s2 = slopes[2];
            double w2 = weight * s2;
            g2 += w2 * left;
            n20 += w2 * s0;
            n21 += w2 * s1;
            n22 += w2 * s2;
            double s3 = slopes[3];
            double w3 = weight * s3;
            g3 += w3 * left;
            n30 += w3 * s0;
            n31 += w3 * s1;
            n32 += w3 * s2;
            n33 += w3 * s3;
            double s4 = slopes[4];
            double w4 = weight * s4;
            g4 += w4 * left;
            n40 += w4 * s0;
            n41 += w4 * s1;
            n42 += w4 * s2;
            n43 += w4 * s3;
            n44 += w4 * s4;
            double s5 = slopes[5];
            double w5 = weight * s5;
            g5 += w5 * left;
            n50 += w5 * s0;
            n51 += w5 * s1;
            n52 += w5 * s2;
            n53 += w5 * s3;
            n54 += w5 * s4;
            n55 += w5 * s5;
        }
        gradient[0] = g0;
        normal[0] = n00;
        gradient[1] = g1;
        normal[6] = n10;
        normal[7] = n11;
        gradient[2] = g2;
        normal[12] = n20;
        normal[13] = n21;
        normal[14] = n22;
        gradient[3] = g3;
        normal[18] = n30;
        normal[19] = n31;
        normal[20] = n32;
        normal[21] = n33;
        gradient[4] = g4;
        normal[24] = n40;
        normal[25] = n41;
        normal[26] = n42;
        normal[27] = n43;
        normal[28] = n44;
        gradient[5] = g5;
        normal[30] = n50;
        normal[31] = n51;
        normal[32] = n52;
        normal[33] = n53;
        normal[34] = n54;
        normal[35] = n55;
        return chiSquare;
    }

    private double normalEquationsOfThree(double[] at) {
        double chiSquare = 0;
        double g0 = 0;
        double g1 = 0;
        double g2 = 0;
        double n00 = 0;
        double n10 = 0;
        double n11 = 0;
        double n20 = 0;
        double n21 = 0;
        double n22 = 0;
        for (int k = 0; k < live[0]; k++) {
            slopes(at, k);
            double weight = 1 / variance[k];
            double left = light[k] - model[k];
            chiSquare += left * left * weight;
            double s0 = slopes[0];
            double w0 = weight * s0;
            g0 += w0 * left;
            n00 += w0 * s0;
            double s1 = slopes[1];
            double w1 = weight * s1;
            g1 += w1 * left;
            n10 += w1 * s0;
            n11 += w1 * s1;
            double s2 = slopes[2];
            double w2 = weight * s2;
            g2 += w2 * left;
            n20 += w2 * s0;
            n21 += w2 * s1;
            n22 += w2 * s2;
        }
        gradient[0] = g0;
        normal[0] = n00;
        gradient[1] = g1;
        normal[3] = n10;
        normal[4] = n11;
        gradient[2] = g2;
        normal[6] = n20;
        normal[7] = n21;
        normal[8] = n22;
        return chiSquare;
    }

    private Optional<Fit> result(double[] at, double chiSquare, double startX, double startY) {
        if (!solver.factor(normal, 0)) {
            return Optional.empty();
        }
        StarImage image = image(at);
        // A star that ran away from its peak is another's.
        double far = Math.hypot(at[X] - startX, at[Y] - startY);
        if (!(far < 1.5 + 2 * Math.sqrt(image.shape().majorVariance()))) {
            return Optional.empty();
        }
        double square = 0;
        for (int k = 0; k < live[0]; k++) {
            square += model[k] * model[k];
        }
        // Where the light is not what was drawn, a neighbour's perhaps, the place is less sure in proportion.
        int freedom = live[0] - parameters;
        double misfit = chiSquare / freedom > 1 + UNLIKELY * Math.sqrt(2.0 / freedom) ? chiSquare / freedom : 1;
        return Optional.of(new Fit(
                at[X],
                at[Y],
                image,
                misfit * solver.inverse(X, X),
                misfit * solver.inverse(Y, Y),
                Math.sqrt(square / cutout.skyVariance()),
                chiSquare,
                freedom,
                parameters > 3,
                rivals()));
    }

    /** How well one pixel, or two that touch, would tell the light without a star. */
    private Rivals rivals() {
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
        double two = one;
        for (int k = 0; k < live[0]; k++) {
            // With none brighter than the brightest, its pair need only beat half the best so far.
            if (weighed[k] > two / 2) {
                for (int i = 0; i < live[0]; i++) {
                    if (i != k && Math.abs(column[i] - column[k]) <= 1 && Math.abs(row[i] - row[k]) <= 1) {
                        two = Math.max(two, weighed[k] + weighed[i]);
                    }
                }
            }
        }
        return new Rivals(star, total - one, total - two);
    }
}
