package polewright.image.star;

import java.util.Optional;

/**
 * Fit of a star that moved during the exposure: a Gaussian summed along a straight line. Length, direction and width
 * can be fitted too. The position along the trail comes from its two ends; the ellipse with the same moments would not
 * use them.
 */
final class TrailFit extends ProfileFit {
    private static final int LENGTH = 3;
    private static final int DIRECTION = 4;
    private static final int SIGMA = 5;
    private static final double LEAST_SIGMA = 0.25;
    private static final double MOST_SIGMA = 20;
    private static final double MOST_LENGTH = 200;

    private final boolean freeShape;

    private TrailFit(Cutout cutout, NoiseModel law, double x, double y, StarImage.Trail guess, boolean freeShape) {
        super(cutout, law, x, y, guess.shape(), freeShape ? 6 : 3);
        this.freeShape = freeShape;
    }

    /**
     * Fits a trail.
     *
     * @param x first guess of the middle's column; the pixels used lie around it
     * @param y first guess of the row
     * @param guess of length, direction and width, or these themselves
     * @param freeShape whether they are fitted too
     * @return empty if nothing like a trail fits the pixels
     */
    static Optional<Fit> of(
            Cutout cutout, double x, double y, StarImage.Trail guess, boolean freeShape, NoiseModel law) {
        return new TrailFit(cutout, law, x, y, guess, freeShape).solve(parameters(x, y, guess));
    }

    /** The residuals of a trail's fit. */
    static Optional<FitResidual> leftover(Cutout cutout, Fit star, NoiseModel law) {
        if (!(star.image() instanceof StarImage.Trail image)) {
            return Optional.empty();
        }
        return new TrailFit(cutout, law, star.x(), star.y(), image, star.freeShape())
                .leftover(parameters(star.x(), star.y(), image));
    }

    private static double[] parameters(double x, double y, StarImage.Trail image) {
        return new double[] {x, y, image.height(), image.length(), image.directionRad(), image.sigma()};
    }

    @Override
    double lightAt(double[] at, double dx, double dy) {
        double c = Math.cos(at[DIRECTION]);
        double s = Math.sin(at[DIRECTION]);
        double u = c * dx + s * dy;
        double v = (c * dy - s * dx) / at[SIGMA];
        return v * v < 60
                ? at[HEIGHT]
                        * Math.exp(-v * v / 2)
                        * (NormalDistribution.below((u + at[LENGTH] / 2) / at[SIGMA])
                                - NormalDistribution.below((u - at[LENGTH] / 2) / at[SIGMA]))
                : 0;
    }

    @Override
    void slopesAt(double[] at, double dx, double dy, double light, double[] slopes) {
        double c = Math.cos(at[DIRECTION]);
        double s = Math.sin(at[DIRECTION]);
        double sigma = at[SIGMA];
        double u = c * dx + s * dy;
        double v = c * dy - s * dx;
        double across = at[HEIGHT] * Math.exp(-v * v / (2 * sigma * sigma));
        double head = (u + at[LENGTH] / 2) / sigma;
        double tail = (u - at[LENGTH] / 2) / sigma;
        double atHead = across * NormalDistribution.density(head) / sigma;
        double atTail = across * NormalDistribution.density(tail) / sigma;
        double alongU = atHead - atTail;
        double alongV = -light * v / (sigma * sigma);
        slopes[X] = s * alongV - c * alongU;
        slopes[Y] = -s * alongU - c * alongV;
        if (freeShape) {
            slopes[LENGTH] = (atHead + atTail) / 2;
            slopes[DIRECTION] = alongU * v - alongV * u;
            slopes[SIGMA] = tail * atTail - head * atHead + light * v * v / (sigma * sigma * sigma);
        }
    }

    @Override
    boolean isPlausible(double[] at) {
        return at[SIGMA] > LEAST_SIGMA && at[SIGMA] < MOST_SIGMA && at[LENGTH] > at[SIGMA] && at[LENGTH] < MOST_LENGTH;
    }

    @Override
    StarImage image(double[] at) {
        return new StarImage.Trail(at[HEIGHT], at[LENGTH], at[DIRECTION], at[SIGMA]);
    }
}
