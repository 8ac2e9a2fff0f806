package polewright.axis.pointing;

import java.util.List;
import java.util.Set;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import polewright.axis.rig.MountKind;
import polewright.sky.angle.Angle;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.Site;

/**
 * Finds a mount's errors from stars that were centred: the likeliest terms of the exact model, each held to its usual size
 * as far as the stars leave it open (Gauss–Newton on terms in units of their usual sizes).
 */
public final class PointingFit {
    private static final List<PointingTerm> TERMS = List.of(PointingTerm.values());
    private static final double STEP_RAD = 1e-5;
    private static final double AT_THE_POLE = 1e-12;
    private static final int ROUNDS = 30;
    private static final int HALVINGS = 12;
    private static final double SETTLED_RAD = 1e-10;
    /** An axis farther off is no axis near the pole; the exact model ends at 57°. */
    private static final double FARTHEST_AXIS_RAD = 0.7;

    private PointingFit() {}

    /** For a fork on a wedge. */
    public static PointingOutcome of(Site site, List<Centring> centrings) {
        return of(MountKind.FORK_ON_WEDGE, site, centrings);
    }

    /** For any mount with a polar axis: terms that such a mount cannot have stay nothing. */
    public static PointingOutcome of(MountKind kind, Site site, List<Centring> centrings) {
        return centrings.isEmpty()
                ? new PointingOutcome.NoStars()
                : new PointingOutcome.Fitted(model(PointingTerm.of(kind), site, centrings));
    }

    /** The same; before any star what is usual. */
    static PointingModel model(Set<PointingTerm> possible, Site site, List<Centring> centrings) {
        if (centrings.isEmpty()) {
            return PointingModel.unknown(possible, site);
        }
        return new Descent(possible, site, centrings).settled();
    }

    /** How the place on the sky moves with each term: rows west and north, columns in the order of the terms. */
    static RealMatrix design(Site site, TermValues about, MountReading reading) {
        return MatrixUtils.createRealMatrix(new Slopes(site, about).at(reading).terms);
    }

    /** How places on the sky move with the terms, about the same terms for many readings. */
    private static final class Slopes {
        private final Vector3D pole;
        private final ForkGeometry about;
        private final List<ForkGeometry> moved;

        Slopes(Site site, TermValues terms) {
            pole = ForkModel.enu(site, new HourAnglePlace(Angle.ZERO, Angle.QUARTER_TURN));
            about = new ForkGeometry(site, terms);
            moved = TERMS.stream()
                    .map(t -> new ForkGeometry(site, terms.with(t, terms.of(t).plus(new Angle(STEP_RAD)))))
                    .toList();
        }

        Slope at(MountReading reading) {
            Vector3D middle = about.direction(reading);
            Vector3D across = middle.crossProduct(pole);
            // At the pole itself every way is south; that of hour angle 0 is as good as any.
            Vector3D west = across.getNorm() < AT_THE_POLE ? Vector3D.MINUS_I : across.normalize();
            Vector3D north = west.crossProduct(middle);
            double[][] terms = new double[2][moved.size()];
            for (int i = 0; i < moved.size(); i++) {
                Vector3D way = moved.get(i).direction(reading).subtract(middle);
                terms[0][i] = way.dotProduct(west) / STEP_RAD;
                terms[1][i] = way.dotProduct(north) / STEP_RAD;
            }
            return new Slope(middle, west, north, terms);
        }
    }

    /** About where the tube looks: which ways are west and north, and by how much either changes with each term. */
    private static final class Slope {
        private final Vector3D middle;
        private final Vector3D west;
        private final Vector3D north;
        private final double[][] terms;

        Slope(Vector3D middle, Vector3D west, Vector3D north, double[][] terms) {
            this.middle = middle;
            this.west = west;
            this.north = north;
            this.terms = terms;
        }

        /** From where the tube looks along the great circle, radians. */
        double[] to(Vector3D seen) {
            Vector3D way = seen.subtract(middle);
            double toWest = way.dotProduct(west);
            double toNorth = way.dotProduct(north);
            double sine = Math.hypot(toWest, toNorth);
            double stretch = sine < 1e-6 ? 1 : Vector3D.angle(middle, seen) / sine;
            return new double[] {toWest * stretch, toNorth * stretch};
        }
    }

    private record Descent(Set<PointingTerm> possible, Site site, List<Centring> centrings, List<Vector3D> seen) {
        Descent(Set<PointingTerm> possible, Site site, List<Centring> centrings) {
            this(
                    possible,
                    site,
                    centrings,
                    centrings.stream().map(c -> ForkModel.enu(site, c.seen())).toList());
        }

        PointingModel settled() {
            TermValues terms = start();
            double cost = cost(terms);
            for (int round = 0; round < ROUNDS; round++) {
                Normal normal = normal(terms);
                RealMatrix step = normal.covariance().multiply(normal.pull());
                double share = 1;
                TermValues next = moved(terms, step, share);
                double nextCost = cost(next);
                for (int halving = 0; halving < HALVINGS && nextCost > cost; halving++) {
                    share /= 2;
                    next = moved(terms, step, share);
                    nextCost = cost(next);
                }
                if (nextCost <= cost) {
                    terms = next;
                    cost = nextCost;
                }
                if (step.getNorm1() * share < SETTLED_RAD || nextCost > cost) {
                    break;
                }
            }
            return new PointingModel(possible, site, terms, normal(terms).covariance(), centrings);
        }

        private record Normal(RealMatrix covariance, RealMatrix pull) {}

        /** The pull is that on the terms themselves; where a term cannot be, its covariance is none. */
        private Normal normal(TermValues terms) {
            int count = TERMS.size();
            RealMatrix information = MatrixUtils.createRealMatrix(count, count);
            RealMatrix pull = MatrixUtils.createRealMatrix(count, 1);
            Slopes slopes = new Slopes(site, terms);
            for (int star = 0; star < centrings.size(); star++) {
                Centring centring = centrings.get(star);
                Slope slope = slopes.at(centring.reading());
                double weight = 1 / Math.pow(centring.sigma().radians(), 2);
                double[] left = slope.to(seen.get(star));
                for (int i = 0; i < count; i++) {
                    double west = slope.terms[0][i] * weight;
                    double north = slope.terms[1][i] * weight;
                    for (int j = 0; j < count; j++) {
                        information.addToEntry(i, j, west * slope.terms[0][j] + north * slope.terms[1][j]);
                    }
                    pull.addToEntry(i, 0, west * left[0] + north * left[1]);
                }
            }
            RealMatrix scale = MatrixUtils.createRealMatrix(count, count);
            for (PointingTerm term : TERMS) {
                int i = term.column();
                double prior = term.usualSize().radians();
                scale.setEntry(i, i, possible.contains(term) ? prior : 0);
                pull.addToEntry(i, 0, -terms.of(term).radians() / (prior * prior));
            }
            RealMatrix scaled = MatrixUtils.createRealIdentityMatrix(count)
                    .add(scale.multiply(information).multiply(scale));
            return new Normal(scale.multiply(MatrixUtils.inverse(scaled)).multiply(scale), pull);
        }

        private double cost(TermValues terms) {
            if (terms.axisOffset().distance().radians() > FARTHEST_AXIS_RAD) {
                return Double.POSITIVE_INFINITY;
            }
            return PointingModel.misfit(site, terms, centrings, seen);
        }

        /** Both zeros by the star whose difference all others are nearest to: no one star, however wrong, upsets it. */
        private TermValues start() {
            double best = Double.POSITIVE_INFINITY;
            TermValues start = TermValues.NONE;
            for (Centring candidate : centrings) {
                TermValues zeros = TermValues.NONE
                        .with(PointingTerm.HOUR_ANGLE_ZERO, zero(candidate))
                        .with(PointingTerm.DECLINATION_ZERO, declinationZero(candidate));
                ForkGeometry fork = new ForkGeometry(site, zeros);
                double sum = 0;
                for (int i = 0; i < centrings.size() && sum < best; i++) {
                    sum += Vector3D.angle(fork.direction(centrings.get(i).reading()), seen.get(i));
                }
                if (sum < best) {
                    best = sum;
                    start = zeros;
                }
            }
            return start;
        }

        private static Angle zero(Centring centring) {
            MountReading reading = centring.reading();
            boolean isThroughPole = Math.abs(reading.declination().degrees()) > 90;
            Angle read = (isThroughPole ? reading.throughPole() : reading).hourAngle();
            return centring.seen().hourAngle().minus(read).wrappedSigned();
        }

        private static Angle declinationZero(Centring centring) {
            MountReading reading = centring.reading();
            boolean isThroughPole = Math.abs(reading.declination().degrees()) > 90;
            Angle seen = centring.seen().declination();
            Angle axis = isThroughPole ? Angle.HALF_TURN.minus(seen) : seen;
            return axis.minus(reading.declination()).wrappedSigned();
        }

        private static TermValues moved(TermValues terms, RealMatrix step, double share) {
            TermValues moved = terms;
            for (PointingTerm term : TERMS) {
                Angle by = new Angle(step.getEntry(term.column(), 0) * share);
                moved = moved.with(term, moved.of(term).plus(by));
            }
            return moved;
        }
    }
}
