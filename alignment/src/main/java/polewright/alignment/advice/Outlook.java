package polewright.alignment.advice;

import polewright.alignment.allowance.Allowance;
import polewright.alignment.allowance.ZoneProbability;
import polewright.alignment.fix.AxisState;
import polewright.alignment.fix.TurnScatter;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;
import polewright.mount.rig.FinishSense;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.sky.angle.Angle;

/**
 * The expected probability that the axis ends within the allowance with the clamps tight, if it is left as it is or
 * turned to the best aim.
 */
final class Outlook {
    // Gauss–Hermite, for a normal distribution.
    private static final double INNER = Math.sqrt(5 - Math.sqrt(10));
    private static final double OUTER = Math.sqrt(5 + Math.sqrt(10));
    private static final double INNER_WEIGHT = (7 + 2 * Math.sqrt(10)) / 60;
    private static final double OUTER_WEIGHT = (7 - 2 * Math.sqrt(10)) / 60;
    private static final double[] NODES_5 = {0, INNER, -INNER, OUTER, -OUTER};
    private static final double[] WEIGHTS_5 = {8 / 15.0, INNER_WEIGHT, INNER_WEIGHT, OUTER_WEIGHT, OUTER_WEIGHT};
    private static final double[] NODES_3 = {0, Math.sqrt(3), -Math.sqrt(3)};
    private static final double[] WEIGHTS_3 = {2 / 3.0, 1 / 6.0, 1 / 6.0};
    private static final double[] NODE_1 = {0};
    private static final double[] WEIGHT_1 = {1};
    // A minor axis below this fraction of the major one is ignored.
    private static final double LITTLE = 0.1;

    private final Rig rig;
    private final AxisState state;
    private final Allowance zone;
    private final boolean clamped;
    private final Tightening tightening;
    private final TurnScatter screws;
    private final OffsetCovariance handScatter;

    Outlook(Situation situation) {
        this.rig = situation.rig();
        this.state = situation.fix().state();
        this.zone = situation.allowance();
        this.clamped = situation.clamped();
        this.tightening = new Tightening(zone, rig);
        this.screws = TurnScatter.of(state);
        this.handScatter = handScatter();
    }

    /**
     * An expected outcome.
     *
     * @param probability of being in the zone in the end
     * @param assurance expected value of {@link Outlook#assurance(double)}
     */
    record Expectation(double probability, double assurance) {}

    /**
     * The value of a probability to an observer who stops at 95 %: a sighting that makes the outcome nearly certain
     * either way is worth more than one that leaves it open, although the mean probability is the same.
     */
    static double assurance(double probability) {
        double square = probability * probability;
        return square * square;
    }

    /**
     * Probability of being in the zone if no screw is turned: now if the clamps are tight, or once they have been
     * tightened.
     */
    double ifLeft(AxisOffset mean, OffsetCovariance covariance) {
        return clamped ? ZoneProbability.of(zone, mean, covariance) : tightening.probability(mean, covariance);
    }

    /** The same once the clamps have been tightened after turns, given the mean and covariance after the turns. */
    double onceTightened(AxisOffset mean, OffsetCovariance covariance) {
        return tightening.probability(mean, loosened(covariance));
    }

    /** The same if the axis is turned to the best aim from a place with this covariance. */
    double ifTurned(AxisOffset from, OffsetCovariance covariance) {
        return ZoneProbability.of(zone, zone.bestAim(), covarianceIfTurned(from, covariance));
    }

    /** Covariance about the best aim after that. */
    OffsetCovariance covarianceIfTurned(AxisOffset from, OffsetCovariance covariance) {
        OffsetCovariance turned =
                screws.after(covariance, tightening.goal().minus(from)).plus(handScatter);
        return loosened(turned).plus(tightening.scatter());
    }

    /** The higher of the probabilities if left and if turned. */
    double better(AxisOffset mean, OffsetCovariance covariance) {
        double left = ifLeft(mean, covariance);
        return left > 0.999 ? left : Math.max(left, ifTurned(mean, covariance));
    }

    /**
     * The expected outcome of a sighting that reduces the covariance: the mean will move by as much as the uncertainty
     * shrinks, and the better of leaving and turning will be done.
     */
    Expectation expected(AxisOffset mean, OffsetCovariance before, OffsetCovariance after) {
        double ee = Math.max(0, before.eastEastArcmin2() - after.eastEastArcmin2());
        double uu = Math.max(0, before.upUpArcmin2() - after.upUpArcmin2());
        double eu = before.eastUpArcmin2() - after.eastUpArcmin2();
        double half = Math.hypot((ee - uu) / 2, eu);
        double major = Math.sqrt((ee + uu) / 2 + half);
        double minor = Math.sqrt(Math.max(0, (ee + uu) / 2 - half));
        double angle = Math.atan2(2 * eu, ee - uu) / 2;
        boolean isLine = minor < LITTLE * major;
        double[] across = isLine ? NODE_1 : NODES_3;
        double[] acrossWeights = isLine ? WEIGHT_1 : WEIGHTS_3;
        double probability = 0;
        double assurance = 0;
        for (int i = 0; i < NODES_5.length; i++) {
            for (int j = 0; j < across.length; j++) {
                double along = NODES_5[i] * major;
                double aside = across[j] * minor;
                AxisOffset then = AxisOffset.ofArcminutes(
                        mean.east().arcminutes() + along * Math.cos(angle) - aside * Math.sin(angle),
                        mean.up().arcminutes() + along * Math.sin(angle) + aside * Math.cos(angle));
                double weight = WEIGHTS_5[i] * acrossWeights[j];
                double better = better(then, after);
                probability += weight * better;
                assurance += weight * assurance(better);
            }
        }
        return new Expectation(probability, assurance);
    }

    /** Tight clamps are loosened before turning, which scatters the axis about as much as tightening. */
    private OffsetCovariance loosened(OffsetCovariance covariance) {
        return clamped ? covariance.plus(tightening.scatter()) : covariance;
    }

    /** Covariance from the scatter of hand turns, rounding and backlash of both screws. */
    private OffsetCovariance handScatter() {
        double east = hand(rig.azimuthScrew()) * state.site().latitude().cos();
        double up = hand(rig.altitudeScrew());
        return new OffsetCovariance(east * east, 0, up * up);
    }

    private double hand(Screw screw) {
        double play = screw.finish() == FinishSense.EITHER ? screw.backlashSigmaTurns() : 0;
        // Rounding to an eighth of a turn: a uniform error of up to a sixteenth.
        double rounding = 1 / 8.0 / Math.sqrt(12);
        double turns = norm(screw.handSigmaTurns(), play, rounding);
        Angle perTurn = screw.move(1, state.axis().altitude()).abs();
        return turns * perTurn.arcminutes();
    }

    private static double norm(double a, double b, double c) {
        return Math.sqrt(a * a + b * b + c * c);
    }
}
