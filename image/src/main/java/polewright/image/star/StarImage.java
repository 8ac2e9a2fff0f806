package polewright.image.star;

/** The light distribution of a star around its centre. */
sealed interface StarImage {
    /** Second moments, pixel included. */
    StarShape shape();

    /** Light at its centre, counts. */
    double height();

    /** Light at a distance from the centre, counts. */
    double lightAt(double dx, double dy);

    /** Total light, counts. */
    double flux();

    /** Full width at half maximum, geometric mean of both axes, pixels. */
    default double fwhm() {
        return shape().fwhm();
    }

    /**
     * An untrailed star with Moffat's profile.
     *
     * @param height at the centre, counts
     * @param shape of the Gaussian that matches its core
     * @param beta of the profile; infinite for a Gaussian
     */
    record Point(double height, StarShape shape, double beta) implements StarImage {
        @Override
        public double lightAt(double dx, double dy) {
            double q = (shape.yy() * dx * dx - 2 * shape.xy() * dx * dy + shape.xx() * dy * dy) / shape.determinant();
            return height
                    * (beta < Double.POSITIVE_INFINITY
                            ? MoffatProfile.power(1 / (1 + q / (2 * beta)), beta)
                            : Math.exp(-q / 2));
        }

        @Override
        public double flux() {
            double wings = beta < Double.POSITIVE_INFINITY ? beta / (beta - 1) : 1;
            return 2 * Math.PI * height * Math.sqrt(shape.determinant()) * wings;
        }

        @Override
        public double fwhm() {
            double gaussian = 2 * Math.log(2);
            double moffat = 2 * beta * (Math.pow(2, 1 / beta) - 1);
            return shape.fwhm() * (beta < Double.POSITIVE_INFINITY ? Math.sqrt(moffat / gaussian) : 1);
        }
    }

    /**
     * A Gaussian that moved uniformly along a straight line during the exposure.
     *
     * @param height in the middle of a long trail, counts
     * @param length of the line, pixels
     * @param directionRad of the line, from +x toward +y
     * @param sigma of the Gaussian, pixel included
     */
    record Trail(double height, double length, double directionRad, double sigma) implements StarImage {
        @Override
        public double lightAt(double dx, double dy) {
            double u = Math.cos(directionRad) * dx + Math.sin(directionRad) * dy;
            double v = (Math.cos(directionRad) * dy - Math.sin(directionRad) * dx) / sigma;
            return height
                    * Math.exp(-v * v / 2)
                    * (NormalDistribution.below((u + length / 2) / sigma)
                            - NormalDistribution.below((u - length / 2) / sigma));
        }

        @Override
        public StarShape shape() {
            double along = length * length / 12;
            double c = Math.cos(directionRad);
            double s = Math.sin(directionRad);
            return new StarShape(along * c * c + sigma * sigma, along * c * s, along * s * s + sigma * sigma);
        }

        @Override
        public double flux() {
            return height * length * Math.sqrt(2 * Math.PI) * sigma;
        }
    }
}
