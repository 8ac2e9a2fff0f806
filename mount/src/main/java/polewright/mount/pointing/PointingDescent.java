package polewright.mount.pointing;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;
import polewright.sky.place.Site;

/**
 * One fit: Gauss–Newton on terms in units of their usual sizes, started from zeros given by one of the stars. The
 * stars' data are stored once, as plain arrays.
 */
final class PointingDescent {
    private static final int ROUNDS = 30;
    private static final int HALVINGS = 12;
    /** Before this round a descent may still recover. */
    private static final int FIRST_ROUNDS = 2;

    private static final double CAUTION = 2;
    private static final double SETTLED_RAD = 1e-10;
    /** An axis farther off is not near the pole; the exact model ends at 57°. */
    private static final double FARTHEST_AXIS_RAD = 0.7;

    private static final PointingTerm[] TERMS = PointingTerm.values();
    private static final int COUNT = TERMS.length;

    private final Set<PointingTerm> possible;
    private final Site site;
    private final List<Centring> centrings;
    private final StarFigures stars;
    private final ForkDirection tube;
    /** The fork whose cost was computed last. */
    private ForkGeometry tried;

    private final SkySlopes slopes;
    private final double[] usual = new double[COUNT];
    private final double[] scale = new double[COUNT];
    private final double[][] scaled = new double[COUNT][COUNT];
    private final double[] gradient = new double[COUNT];

    PointingDescent(Set<PointingTerm> possible, Site site, List<Centring> centrings) {
        this.possible = possible;
        this.site = site;
        this.centrings = centrings;
        stars = new StarFigures(site, centrings);
        tried = new ForkGeometry(site, new double[COUNT]);
        tube = new ForkDirection(tried);
        slopes = new SkySlopes(site, tried);
        for (int i = 0; i < COUNT; i++) {
            usual[i] = TERMS[i].usualSizeRad();
            scale[i] = possible.contains(TERMS[i]) ? usual[i] : 0;
        }
    }

    /**
     * The likeliest terms, with their covariance.
     *
     * @param misfitLimit a misfit above which the model is useless. The descent stops once it would end above this
     *     limit even if every remaining iteration lowered the misfit twice as much as the last.
     */
    PointingModel settled(double misfitLimit) {
        double[] terms = start();
        double[] next = new double[COUNT];
        double cost = cost(terms);
        ForkGeometry fork = tried;
        for (int round = 0; round < ROUNDS; round++) {
            gather(terms, fork);
            double[] step = step();
            double share = 1;
            move(terms, step, share, next);
            double nextCost = cost(next);
            for (int halving = 0; halving < HALVINGS && nextCost > cost; halving++) {
                share /= 2;
                move(terms, step, share, next);
                nextCost = cost(next);
            }
            boolean isWorse = nextCost > cost;
            boolean isSettled = isWorse || length(step) * share < SETTLED_RAD;
            boolean isHopeless =
                    round >= FIRST_ROUNDS && nextCost - CAUTION * (ROUNDS - round) * (cost - nextCost) > misfitLimit;
            if (!isWorse) {
                double[] spare = terms;
                terms = next;
                next = spare;
                fork = tried;
                cost = nextCost;
            }
            if (isSettled || isHopeless) {
                break;
            }
        }
        gather(terms, fork);
        return new PointingModel(possible, site, TermValues.ofRadians(terms), covariance(), centrings);
    }

    /** The normal equations at these terms, in units of their usual sizes, and the gradient from the priors. */
    private void gather(double[] terms, ForkGeometry fork) {
        for (int i = 0; i < COUNT; i++) {
            gradient[i] = -terms[i] / (usual[i] * usual[i]);
            Arrays.fill(scaled[i], 0);
        }
        slopes.use(fork);
        double[] west = slopes.west();
        double[] north = slopes.north();
        for (int star = 0; star < stars.count(); star++) {
            slopes.at(stars.hourAngle(star), stars.declination(star));
            slopes.measureTo(stars.seen(), star);
            double weight = stars.weight(star);
            for (int i = 0; i < COUNT; i++) {
                double weightWest = west[i] * weight;
                double weightNorth = north[i] * weight;
                for (int j = 0; j <= i; j++) {
                    scaled[i][j] += weightWest * west[j] + weightNorth * north[j];
                }
                gradient[i] += weightWest * slopes.residualWest() + weightNorth * slopes.residualNorth();
            }
        }
        for (int i = 0; i < COUNT; i++) {
            for (int j = 0; j <= i; j++) {
                scaled[i][j] *= scale[i] * scale[j];
                scaled[j][i] = scaled[i][j];
            }
            scaled[i][i] += 1;
        }
    }

    /** For terms that the mount cannot have, the step is zero. */
    private double[] step() {
        double[] step = new double[COUNT];
        for (int i = 0; i < COUNT; i++) {
            step[i] = scale[i] * gradient[i];
        }
        step = decomposed().getSolver().solve(new ArrayRealVector(step, false)).toArray();
        for (int i = 0; i < COUNT; i++) {
            step[i] *= scale[i];
        }
        return step;
    }

    /** For terms that the mount cannot have, the covariance is zero. */
    private RealMatrix covariance() {
        RealMatrix covariance = decomposed().getSolver().getInverse();
        for (int i = 0; i < COUNT; i++) {
            for (int j = 0; j < COUNT; j++) {
                covariance.multiplyEntry(i, j, scale[i] * scale[j]);
            }
        }
        return covariance;
    }

    private LUDecomposition decomposed() {
        return new LUDecomposition(new Array2DRowRealMatrix(scaled, false));
    }

    private double cost(double[] terms) {
        double east = terms[PointingTerm.AXIS_EAST.column()];
        double up = terms[PointingTerm.AXIS_UP.column()];
        if (Math.hypot(east, up) > FARTHEST_AXIS_RAD) {
            return Double.POSITIVE_INFINITY;
        }
        tried = new ForkGeometry(site, terms);
        tube.use(tried);
        return stars.misfit(tube) + TermValues.misfit(terms);
    }

    /**
     * Both zeros from the star whose values are closest to all others', so that no single outlier can spoil the start.
     */
    private double[] start() {
        double best = Double.POSITIVE_INFINITY;
        // The direction is still that of a fork without errors.
        double[] start = new double[COUNT];
        for (int candidate = 0; candidate < stars.count(); candidate++) {
            double hourAngle = stars.hourAngleZero(candidate);
            double declination = stars.declinationZero(candidate);
            double sum = stars.sumOfAngles(tube, hourAngle, declination, best);
            if (sum < best) {
                best = sum;
                start[PointingTerm.HOUR_ANGLE_ZERO.column()] = hourAngle;
                start[PointingTerm.DECLINATION_ZERO.column()] = declination;
            }
        }
        return start;
    }

    private static double length(double[] step) {
        double length = 0;
        for (double part : step) {
            length += Math.abs(part);
        }
        return length;
    }

    private static void move(double[] terms, double[] step, double share, double[] moved) {
        for (int i = 0; i < COUNT; i++) {
            moved[i] = terms[i] + step[i] * share;
        }
    }
}
