package polewright.alignment.allowance;

import java.util.List;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;

/** The probability that the axis lies in a zone. */
public final class ZoneProbability {
    // Corners of the polygon that replaces a disc of the same area.
    private static final int DISC_CORNERS = 96;
    private static final double[] DISC_EAST = new double[DISC_CORNERS + 1];
    private static final double[] DISC_UP = new double[DISC_CORNERS + 1];
    // Beyond this many sigmas the Gaussian is negligible.
    private static final double TAIL_SIGMAS = 8;
    // For a piece of edge this short, in sigmas, three Gauss–Legendre nodes are enough.
    private static final double PIECE_SIGMAS = 0.8;
    private static final double OUTER_NODE = Math.sqrt(0.6) / 2;
    private static final double OUTER_WEIGHT = 5 / 18.0;
    private static final double MIDDLE_WEIGHT = 8 / 18.0;
    // A larger disc would need too many steps, most of them far from the mean.
    private static final double LARGEST_DISC_SIGMAS = 12;
    private static final int LEAST_STEPS = 24;
    private static final double STEP_SIGMAS = 1.2;
    private static final int STEPS_AROUND = 96;
    private static final double[] COSINE = new double[STEPS_AROUND];
    private static final double[] SINE = new double[STEPS_AROUND];
    // Rounding error of edge angles that ought to cancel around the zone.
    private static final double ROUNDING = 1e-12;
    // Avoids division by a zero variance; a thousandth of an arcsecond is as good as exact.
    private static final double LEAST_VARIANCE_ARCMIN2 = 1e-10;

    static {
        double angle = 2 * Math.PI / DISC_CORNERS;
        double circumscribed = Math.sqrt(angle / Math.sin(angle));
        for (int i = 0; i <= DISC_CORNERS; i++) {
            DISC_EAST[i] = circumscribed * Math.cos(i * angle);
            DISC_UP[i] = circumscribed * Math.sin(i * angle);
        }
    }

    static {
        for (int i = 0; i < STEPS_AROUND; i++) {
            COSINE[i] = Math.cos(2 * Math.PI * i / STEPS_AROUND);
            SINE[i] = Math.sin(2 * Math.PI * i / STEPS_AROUND);
        }
    }

    private ZoneProbability() {}

    /**
     * Integral of the Gaussian of mean {@code offset} over the zone, good to about 1e-5 for a polygon of any shape,
     * however thin, and to 1e-4 for a disc.
     *
     * <p>In coordinates in which the Gaussian is round and centred on the origin, its integral over the triangle of
     * origin and a piece of edge is the triangle's angle minus the part beyond the edge. The whole is therefore a sum
     * of integrals along the edges: P = 1/2π Σ ∫ (1 − exp(−r²/2)) dθ. It is smooth wherever the mean lies: inside,
     * outside or on the edge.
     */
    public static double of(Allowance zone, AxisOffset offset, OffsetCovariance covariance) {
        Round round = Round.of(offset, covariance);
        double sum = 0;
        if (zone instanceof DiscAllowance disc && round.isWithinSigmas(disc, LARGEST_DISC_SIGMAS)) {
            sum = round.aroundDisc(disc.radius().arcminutes());
        } else if (zone instanceof DiscAllowance disc) {
            double radius = disc.radius().arcminutes();
            for (int i = 0; i < DISC_CORNERS; i++) {
                sum += round.edge(
                        radius * DISC_EAST[i], radius * DISC_UP[i], radius * DISC_EAST[i + 1], radius * DISC_UP[i + 1]);
            }
        } else if (zone instanceof WorkZone work) {
            List<ZoneEdge> edges = work.edges();
            for (ZoneEdge edge : edges) {
                sum += round.edge(
                        edge.from().east().arcminutes(),
                        edge.from().up().arcminutes(),
                        edge.to().east().arcminutes(),
                        edge.to().up().arcminutes());
            }
        }
        double probability = sum / (2 * Math.PI);
        return probability < ROUNDING ? 0 : Math.min(1, probability);
    }

    /**
     * Coordinates in which the Gaussian is round: x = (east − mean) / sigma east, y is the remainder of up over its
     * sigma.
     *
     * @param slope of up on east
     */
    private record Round(double meanEast, double meanUp, double sigmaEast, double slope, double sigmaUpGivenEast) {
        static Round of(AxisOffset offset, OffsetCovariance covariance) {
            double varianceEast = Math.max(LEAST_VARIANCE_ARCMIN2, covariance.eastEastArcmin2());
            double slope = covariance.eastUpArcmin2() / varianceEast;
            double varianceUp = covariance.upUpArcmin2() - slope * covariance.eastUpArcmin2();
            return new Round(
                    offset.east().arcminutes(),
                    offset.up().arcminutes(),
                    Math.sqrt(varianceEast),
                    slope,
                    Math.sqrt(Math.max(LEAST_VARIANCE_ARCMIN2, varianceUp)));
        }

        /** Whether the disc's radius is at most this many sigmas in any direction. */
        boolean isWithinSigmas(DiscAllowance disc, double sigmas) {
            return disc.radius().arcminutes() <= sigmas * Math.min(sigmaEast, sigmaUpGivenEast);
        }

        /**
         * The integral around the disc in equal steps. On a closed curve the trapezoidal rule converges exponentially
         * once no step is much longer than a sigma.
         */
        double aroundDisc(double radius) {
            double fromRim = Math.hypot(meanEast, meanUp) - radius;
            if (Math.abs(fromRim) > TAIL_SIGMAS * longestSigma()) {
                return fromRim > 0 ? 0 : 2 * Math.PI;
            }
            double longest = radius / Math.min(sigmaEast, sigmaUpGivenEast);
            int stride = 1;
            int least = Math.max(LEAST_STEPS, (int) Math.ceil(2 * Math.PI * longest / STEP_SIGMAS));
            while (STEPS_AROUND / (2 * stride) >= least) {
                stride *= 2;
            }
            double sum = 0;
            for (int i = 0; i < STEPS_AROUND; i += stride) {
                double east = radius * COSINE[i];
                double up = radius * SINE[i];
                double x = (east - meanEast) / sigmaEast;
                double y = (up - meanUp - slope * (east - meanEast)) / sigmaUpGivenEast;
                // Their derivatives with respect to the angle.
                double alongX = -up / sigmaEast;
                double alongY = (east + slope * up) / sigmaUpGivenEast;
                sum += (x * alongY - y * alongX) * shareOfSquare(x, y);
            }
            return sum * 2 * Math.PI * stride / STEPS_AROUND;
        }

        /** An upper bound. */
        private double longestSigma() {
            return Math.sqrt(sigmaEast * sigmaEast * (1 + slope * slope) + sigmaUpGivenEast * sigmaUpGivenEast);
        }

        double edge(double fromEast, double fromUp, double toEast, double toUp) {
            double east = fromEast - meanEast;
            double eastTo = toEast - meanEast;
            return piece(
                    east / sigmaEast,
                    (fromUp - meanUp - slope * east) / sigmaUpGivenEast,
                    eastTo / sigmaEast,
                    (toUp - meanUp - slope * eastTo) / sigmaUpGivenEast);
        }

        /** ∫ (1 − exp(−r²/2)) dθ along a straight piece. */
        private static double piece(double ax, double ay, double bx, double by) {
            double cross = ax * by - ay * bx;
            if (cross == 0) {
                return 0;
            }
            double dx = bx - ax;
            double dy = by - ay;
            double square = dx * dx + dy * dy;
            double foot = Math.max(0, Math.min(1, -(ax * dx + ay * dy) / square));
            double nearX = ax + foot * dx;
            double nearY = ay + foot * dy;
            if (nearX * nearX + nearY * nearY > TAIL_SIGMAS * TAIL_SIGMAS) {
                return Math.atan2(cross, ax * bx + ay * by);
            }
            double middleX = (ax + bx) / 2;
            double middleY = (ay + by) / 2;
            if (square > PIECE_SIGMAS * PIECE_SIGMAS) {
                return piece(ax, ay, middleX, middleY) + piece(middleX, middleY, bx, by);
            }
            return cross
                    * (MIDDLE_WEIGHT * shareOfSquare(middleX, middleY)
                            + OUTER_WEIGHT
                                    * (shareOfSquare(middleX - OUTER_NODE * dx, middleY - OUTER_NODE * dy)
                                            + shareOfSquare(middleX + OUTER_NODE * dx, middleY + OUTER_NODE * dy)));
        }

        /** (1 − exp(−r²/2)) / r². */
        private static double shareOfSquare(double x, double y) {
            double square = x * x + y * y;
            // The series is good to 2e-8 there, where the difference would suffer from cancellation.
            return square < 0.02 ? 0.5 - square / 8 + square * square / 48 : (1 - Math.exp(-square / 2)) / square;
        }
    }
}
