package polewright.mount.pointing;

import polewright.sky.angle.Angle;

/**
 * The expected distance between a go-to and its target.
 *
 * @param rms root mean square of the distance
 * @param radius95 radius within which 95 % of go-tos land
 */
public record GoToError(Angle rms, Angle radius95) {
    private static final double BEYOND = 0.05;
    private static final int ANGLES = 1024;
    private static final double[] RADII = radii(65);

    /** From the covariance on the sky, radians²: west–west, west–north, north–north. */
    static GoToError of(double westWest, double westNorth, double northNorth) {
        double mean = (westWest + northNorth) / 2;
        double half = Math.hypot((westWest - northNorth) / 2, westNorth);
        double longest = Math.sqrt(mean + half);
        double ratio = longest == 0 ? 0 : Math.sqrt(Math.max(0, mean - half)) / longest;
        double at = ratio * (RADII.length - 1);
        int below = (int) Math.min(at, RADII.length - 2);
        double radius = RADII[below] + (at - below) * (RADII[below + 1] - RADII[below]);
        return new GoToError(new Angle(Math.sqrt(2 * mean)), new Angle(longest * radius));
    }

    /** By the ratio of the shorter to the longer sigma, 0 to 1: the radius that contains 95 %, in longer sigmas. */
    private static double[] radii(int count) {
        double[] radii = new double[count];
        for (int i = 0; i < count; i++) {
            double ratio = (double) i / (count - 1);
            double inside = 1.9;
            double outside = 2.5;
            while (outside - inside > 1e-9) {
                double middle = (inside + outside) / 2;
                if (beyond(middle, ratio) > BEYOND) {
                    inside = middle;
                } else {
                    outside = middle;
                }
            }
            radii[i] = outside;
        }
        return radii;
    }

    /** Probability of landing farther out: mean over all directions t of exp(−r² / 2(cos² t + ratio² sin² t)). */
    private static double beyond(double radius, double ratio) {
        double sum = 0;
        for (int i = 0; i < ANGLES; i++) {
            double angle = (i + 0.5) * Math.PI / 2 / ANGLES;
            double along = Math.cos(angle);
            double across = ratio * Math.sin(angle);
            sum += Math.exp(-radius * radius / (2 * (along * along + across * across)));
        }
        return sum / ANGLES;
    }
}
