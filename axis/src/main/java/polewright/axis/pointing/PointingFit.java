package polewright.axis.pointing;

import java.util.List;
import java.util.Set;
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
        RealMatrix design = MatrixUtils.createRealMatrix(2, TERMS.size());
        HourAnglePlace middle = ForkModel.looksAt(site, about, reading);
        for (PointingTerm term : TERMS) {
            Angle value = about.of(term).plus(new Angle(STEP_RAD));
            SkyOffset way = SkyOffset.between(middle, ForkModel.looksAt(site, about.with(term, value), reading));
            design.setEntry(0, term.column(), way.west().radians() / STEP_RAD);
            design.setEntry(1, term.column(), way.north().radians() / STEP_RAD);
        }
        return design;
    }

    private record Descent(Set<PointingTerm> possible, Site site, List<Centring> centrings) {
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
            RealMatrix seen = MatrixUtils.createRealMatrix(count, count);
            RealMatrix pull = MatrixUtils.createRealMatrix(count, 1);
            for (Centring centring : centrings) {
                RealMatrix design = design(site, terms, centring.reading());
                double weight = 1 / Math.pow(centring.sigma().radians(), 2);
                SkyOffset left = SkyOffset.between(ForkModel.looksAt(site, terms, centring.reading()), centring.seen());
                RealMatrix residual = MatrixUtils.createColumnRealMatrix(
                        new double[] {left.west().radians(), left.north().radians()});
                RealMatrix across = design.transpose().scalarMultiply(weight);
                seen = seen.add(across.multiply(design));
                pull = pull.add(across.multiply(residual));
            }
            RealMatrix scale = MatrixUtils.createRealMatrix(count, count);
            for (PointingTerm term : TERMS) {
                int i = term.column();
                double prior = term.usualSize().radians();
                scale.setEntry(i, i, possible.contains(term) ? prior : 0);
                pull.addToEntry(i, 0, -terms.of(term).radians() / (prior * prior));
            }
            RealMatrix scaled = MatrixUtils.createRealIdentityMatrix(count)
                    .add(scale.multiply(seen).multiply(scale));
            return new Normal(scale.multiply(MatrixUtils.inverse(scaled)).multiply(scale), pull);
        }

        private double cost(TermValues terms) {
            if (terms.axisOffset().distance().radians() > FARTHEST_AXIS_RAD) {
                return Double.POSITIVE_INFINITY;
            }
            return PointingModel.misfit(site, terms, centrings);
        }

        /** Both zeros by the star whose difference all others are nearest to: no one star, however wrong, upsets it. */
        private TermValues start() {
            double best = Double.POSITIVE_INFINITY;
            TermValues start = TermValues.NONE;
            for (Centring candidate : centrings) {
                TermValues zeros = TermValues.NONE
                        .with(PointingTerm.HOUR_ANGLE_ZERO, zero(candidate))
                        .with(PointingTerm.DECLINATION_ZERO, declinationZero(candidate));
                double sum = 0;
                for (Centring centring : centrings) {
                    sum += SkyOffset.between(ForkModel.looksAt(site, zeros, centring.reading()), centring.seen())
                            .distance()
                            .radians();
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
