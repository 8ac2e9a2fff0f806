package polewright.simulation.camera;

/**
 * The path of a star's image during an exposure: an odd number of places at equal steps of time, the middle one at
 * the middle of the exposure.
 */
final class StarImage {
    private final int number;
    private final double magnitude;
    private final double electrons;
    private final double[] xs;
    private final double[] ys;

    StarImage(int number, double magnitude, double electrons, double[] xs, double[] ys) {
        this.number = number;
        this.magnitude = magnitude;
        this.electrons = electrons;
        this.xs = xs;
        this.ys = ys;
    }

    static StarImage still(int number, double magnitude, double electrons, double x, double y) {
        return new StarImage(number, magnitude, electrons, new double[] {x}, new double[] {y});
    }

    double electrons() {
        return electrons;
    }

    int places() {
        return xs.length;
    }

    double x(int place) {
        return xs[place];
    }

    double y(int place) {
        return ys[place];
    }

    /** Length of the path, pixels. */
    double length() {
        double length = 0;
        for (int i = 1; i < xs.length; i++) {
            length += Math.hypot(xs[i] - xs[i - 1], ys[i] - ys[i - 1]);
        }
        return length;
    }

    TrueStar truth(Vignetting shade) {
        int middle = xs.length / 2;
        int last = xs.length - 1;
        return new TrueStar(
                number,
                magnitude,
                xs[middle],
                ys[middle],
                xs[0],
                ys[0],
                xs[last],
                ys[last],
                electrons * shade.ofStars(xs[middle], ys[middle]));
    }
}
