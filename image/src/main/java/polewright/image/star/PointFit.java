package polewright.image.star;

import java.util.Arrays;
import java.util.Optional;

/**
 * Fit of a star without trailing; if its shape is free, three more parameters are the elements of the inverse of its
 * moments. Its profile is Moffat's (1969, Astron. Astrophys. 3, 455), {@code (1 + q/2β)^−β}, which has the wings
 * produced by seeing and optics, and becomes the Gaussian {@code exp(−q/2)} for infinite β.
 */
final class PointFit extends ProfileFit {
    private static final int XX = 3;
    private static final int XY = 4;
    private static final int YY = 5;
    // Anything sharper than a quarter of a pixel did not pass a lens.
    private static final double LEAST_VARIANCE = 0.05;
    private static final double MOST_VARIANCE = 400;

    private final boolean freeShape;
    private final double beta;
    private final PointMoments moments = new PointMoments();
    // One for a Gaussian; for Moffat's profile 1 / (1 + q/2β) from the last evaluation.
    private final double[] fall;

    private PointFit(
            Cutout cutout, NoiseModel law, double x, double y, StarShape mask, boolean freeShape, double beta) {
        super(cutout, law, x, y, mask, freeShape ? 6 : 3);
        this.beta = beta;
        this.freeShape = freeShape;
        fall = new double[cutout.width() * cutout.height()];
        if (beta == Double.POSITIVE_INFINITY) {
            Arrays.fill(fall, 1);
        }
    }

    /**
     * Fits a star.
     *
     * @param x first guess of the column; the pixels used lie around it
     * @param y first guess of the row
     * @param shape first guess of the shape, or the shape itself
     * @param freeShape whether the shape is fitted too
     * @param beta of the profile
     * @return empty if nothing like a star fits the pixels
     */
    static Optional<Fit> of(
            Cutout cutout, double x, double y, StarShape shape, boolean freeShape, double beta, NoiseModel law) {
        return new PointFit(cutout, law, x, y, shape, freeShape, beta).solve(parameters(x, y, 1, shape));
    }

    /** Fits a star of free shape to the pixels within a mask. */
    static Optional<Fit> masked(
            Cutout cutout, double x, double y, StarShape shape, StarShape mask, double beta, NoiseModel law) {
        return new PointFit(cutout, law, x, y, mask, true, beta).solve(parameters(x, y, 1, shape));
    }

    /** The residuals of a star's fit. */
    static Optional<FitResidual> leftover(Cutout cutout, Fit star, NoiseModel law) {
        if (!(star.image() instanceof StarImage.Point image)) {
            return Optional.empty();
        }
        return new PointFit(cutout, law, star.x(), star.y(), star.shape(), star.freeShape(), image.beta())
                .leftover(parameters(star.x(), star.y(), image.height(), image.shape()));
    }

    private static double[] parameters(double x, double y, double height, StarShape shape) {
        double det = shape.determinant();
        return new double[] {x, y, height, shape.yy() / det, -shape.xy() / det, shape.xx() / det};
    }

    @Override
    double lightAt(double[] at, double dx, double dy) {
        double q = at[XX] * dx * dx + 2 * at[XY] * dx * dy + at[YY] * dy * dy;
        if (beta < Double.POSITIVE_INFINITY) {
            return at[HEIGHT] * MoffatProfile.power(1 / (1 + q / (2 * beta)), beta);
        }
        return q < 60 ? at[HEIGHT] * Math.exp(-q / 2) : 0;
    }

    /**
     * Along a row each Gaussian value follows from the last by a product whose factor itself changes by a constant one:
     * two exponentials per row instead of one per pixel.
     */
    @Override
    void draw(double[] at, int[] column, int[] row, double[] drawn, int pixels) {
        if (beta < Double.POSITIVE_INFINITY) {
            drawMoffat(at, column, row, drawn, pixels);
            return;
        }
        double bend = Math.exp(-at[XX]);
        double value = 0;
        double factor = 0;
        for (int k = 0; k < pixels; k++) {
            if (k > 0 && row[k] == row[k - 1] && column[k] == column[k - 1] + 1) {
                value *= factor;
                factor *= bend;
            } else {
                double dx = column[k] - at[X];
                double dy = row[k] - at[Y];
                value = at[HEIGHT] * Math.exp(-(at[XX] * dx * dx + 2 * at[XY] * dx * dy + at[YY] * dy * dy) / 2);
                factor = Math.exp(-at[XX] * (dx + 0.5) - at[XY] * dy);
            }
            drawn[k] = value;
        }
    }

    private void drawMoffat(double[] at, int[] column, int[] row, double[] drawn, int pixels) {
        double xx = at[XX] / (2 * beta);
        double xy = at[XY] / beta;
        double yy = at[YY] / (2 * beta);
        for (int k = 0; k < pixels; k++) {
            double dx = column[k] - at[X];
            double dy = row[k] - at[Y];
            fall[k] = 1 / (1 + (xx * dx + xy * dy) * dx + yy * dy * dy);
        }
        MoffatProfile.power(fall, beta, at[HEIGHT], drawn, pixels);
    }

    @Override
    double fill(
            NormalEquations into,
            double[] at,
            int pixels,
            int[] column,
            int[] row,
            double[] light,
            double[] model,
            double[] weight) {
        double chiSquare = moments.sum(at[X], at[Y], pixels, column, row, light, model, weight, fall);
        moments.writeCentre(into, at[HEIGHT], at[XX], at[XY], at[YY]);
        if (freeShape) {
            moments.writeShape(into, at[HEIGHT], at[XX], at[XY], at[YY]);
        }
        return chiSquare;
    }

    @Override
    void slopesAt(double[] at, double dx, double dy, double light, double[] slopes) {
        double u = at[XX] * dx + at[XY] * dy;
        double v = at[XY] * dx + at[YY] * dy;
        // Minus twice the derivative of the light with respect to q.
        double fall = beta < Double.POSITIVE_INFINITY ? light / (1 + (u * dx + v * dy) / (2 * beta)) : light;
        slopes[X] = fall * u;
        slopes[Y] = fall * v;
        if (freeShape) {
            slopes[XX] = -fall * dx * dx / 2;
            slopes[XY] = -fall * dx * dy;
            slopes[YY] = -fall * dy * dy / 2;
        }
    }

    @Override
    boolean isPlausible(double[] at) {
        double det = at[XX] * at[YY] - at[XY] * at[XY];
        return at[XX] > 0
                && at[YY] > 0
                && det > 0
                && Math.max(at[XX], at[YY]) < MOST_VARIANCE * det
                && Math.max(at[XX], at[YY]) < 1 / LEAST_VARIANCE;
    }

    @Override
    StarImage image(double[] at) {
        double det = at[XX] * at[YY] - at[XY] * at[XY];
        return new StarImage.Point(at[HEIGHT], new StarShape(at[YY] / det, -at[XY] / det, at[XX] / det), beta);
    }
}
