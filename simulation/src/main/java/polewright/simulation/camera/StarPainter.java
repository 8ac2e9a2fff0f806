package polewright.simulation.camera;

/**
 * Adds stars' light to a detector: a Gaussian core and a wider halo, each integrated over every pixel and along the
 * image's path. All of a star's light is added except for 0.01 electrons per pixel at its outer edge.
 */
final class StarPainter {
    private static final double FWHM_PER_SIGMA = 2 * Math.sqrt(2 * Math.log(2));
    private static final double HALO_WIDTH = 2.5;
    private static final double NEGLIGIBLE_ELECTRONS = 0.01;
    private static final double MOST_SIGMAS = 8;
    private static final double LEAST_SIGMAS = 3.5;
    // Points at this spacing along a trail make one smooth line.
    private static final double SIGMAS_PER_POINT = 0.7;
    private static final double STILL_SIGMAS = 0.05;

    private final int width;
    private final int height;
    private final float[] electrons;
    private final double sigma;
    private final double haloFraction;
    private final double[] columnShares;

    /**
     * Adds light to {@code electrons}.
     *
     * @param electrons row by row; light is added to what is there
     * @param fwhmPixels width of the core
     */
    StarPainter(Detector detector, float[] electrons, double fwhmPixels, double haloFraction) {
        this.width = detector.width();
        this.height = detector.height();
        this.electrons = electrons;
        this.sigma = fwhmPixels / FWHM_PER_SIGMA;
        this.haloFraction = haloFraction;
        this.columnShares = new double[width];
    }

    void paint(StarImage star) {
        if (haloFraction > 0) {
            paint(star, star.electrons() * haloFraction, HALO_WIDTH * sigma);
        }
        paint(star, star.electrons() * (1 - haloFraction), sigma);
    }

    void paint(SatelliteTrail trail) {
        double length = Math.hypot(trail.x1() - trail.x0(), trail.y1() - trail.y0());
        double[] xs = {trail.x0(), (trail.x0() + trail.x1()) / 2, trail.x1()};
        double[] ys = {trail.y0(), (trail.y0() + trail.y1()) / 2, trail.y1()};
        paint(new StarImage(0, 0, trail.electronsPerPixel() * length, xs, ys));
    }

    private void paint(StarImage star, double light, double spread) {
        double length = star.length();
        if (length < STILL_SIGMAS * spread) {
            spot(along(star, 0.5, true), along(star, 0.5, false), light, spread);
            return;
        }
        int points = Math.max(2, (int) Math.ceil(length / (SIGMAS_PER_POINT * spread)));
        // Points at the middles of equal pieces have a smaller variance than a line: they are spread until it is
        // equal.
        double stretch = 1 / Math.sqrt((double) points * points - 1);
        for (int i = 0; i < points; i++) {
            double time = 0.5 + (i + 0.5 - points / 2.0) * stretch;
            spot(along(star, time, true), along(star, time, false), light / points, spread);
        }
    }

    /** A parabola through the three places of the section that contains the time, 0 to 1. */
    private static double along(StarImage star, double time, boolean column) {
        if (star.places() == 1) {
            return column ? star.x(0) : star.y(0);
        }
        int sections = (star.places() - 1) / 2;
        int section = Math.min(sections - 1, (int) (time * sections));
        double t = 2 * (time * sections - section) - 1;
        int first = 2 * section;
        double before = column ? star.x(first) : star.y(first);
        double here = column ? star.x(first + 1) : star.y(first + 1);
        double after = column ? star.x(first + 2) : star.y(first + 2);
        return here + t * (after - before) / 2 + t * t * ((after + before) / 2 - here);
    }

    private void spot(double x, double y, double light, double spread) {
        double peak = light / (2 * Math.PI * spread * spread);
        double sigmas = Math.sqrt(2 * Math.log(Math.max(1, peak / NEGLIGIBLE_ELECTRONS)));
        double reach = spread * Math.min(MOST_SIGMAS, Math.max(LEAST_SIGMAS, sigmas)) + 0.5;
        int firstColumn = (int) Math.max(0, Math.ceil(x - reach));
        int lastColumn = (int) Math.min(width - 1.0, Math.floor(x + reach));
        int firstRow = (int) Math.max(0, Math.ceil(y - reach));
        int lastRow = (int) Math.min(height - 1.0, Math.floor(y + reach));
        if (firstColumn > lastColumn || firstRow > lastRow) {
            return;
        }
        double below = GaussianTable.below((firstColumn - 0.5 - x) / spread);
        for (int column = firstColumn; column <= lastColumn; column++) {
            double next = GaussianTable.below((column + 0.5 - x) / spread);
            columnShares[column] = light * (next - below);
            below = next;
        }
        below = GaussianTable.below((firstRow - 0.5 - y) / spread);
        for (int row = firstRow; row <= lastRow; row++) {
            double next = GaussianTable.below((row + 0.5 - y) / spread);
            double share = next - below;
            below = next;
            int start = row * width;
            for (int column = firstColumn; column <= lastColumn; column++) {
                electrons[start + column] += (float) (share * columnShares[column]);
            }
        }
    }
}
