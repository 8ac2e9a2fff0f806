package polewright.alignment.advice;

import java.util.List;
import java.util.function.ToDoubleFunction;
import polewright.alignment.fix.Fix;
import polewright.alignment.fix.ScrewSenses;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;

/**
 * The possible places of the axis: the fix, and others while the direction of a screw is unknown.
 *
 * @param mostLikely the fix
 * @param known covariance about each place
 * @param others the other places, each with its probability
 */
public record PossibleAxes(AxisOffset mostLikely, OffsetCovariance known, List<ScrewSenses.Otherwise> others) {
    public PossibleAxes {
        others = List.copyOf(others);
    }

    public static PossibleAxes of(Fix fix) {
        return new PossibleAxes(
                fix.state().offset(),
                fix.state().offsetCovariance(),
                fix.senses().otherPlaces());
    }

    /** The expected value, over all places, of a probability that depends on where the axis is. */
    double expected(ToDoubleFunction<AxisOffset> probability) {
        double sum = 0;
        double elsewhere = 0;
        for (ScrewSenses.Otherwise other : others) {
            sum += other.probability() * probability.applyAsDouble(other.offset());
            elsewhere += other.probability();
        }
        return sum + (1 - elsewhere) * probability.applyAsDouble(mostLikely);
    }

    /** Mean squared distance of the other places from the fix, relative to the variance of each. */
    double spread() {
        double square = 0;
        for (ScrewSenses.Otherwise other : others) {
            double difference = other.offset().minus(mostLikely).distance().arcminutes();
            square += other.probability() * difference * difference;
        }
        return square / (known.eastEastArcmin2() + known.upUpArcmin2());
    }

    /** The mean of all places, weighted by probability. */
    public AxisOffset mean() {
        double east = mostLikely.east().arcminutes();
        double up = mostLikely.up().arcminutes();
        for (ScrewSenses.Otherwise other : others) {
            AxisOffset difference = other.offset().minus(mostLikely);
            east += other.probability() * difference.east().arcminutes();
            up += other.probability() * difference.up().arcminutes();
        }
        return AxisOffset.ofArcminutes(east, up);
    }

    /** Covariance of the mixture of all places, about their mean. */
    public OffsetCovariance combinedCovariance() {
        double east = 0;
        double up = 0;
        double eastEast = 0;
        double eastUp = 0;
        double upUp = 0;
        for (ScrewSenses.Otherwise other : others) {
            AxisOffset difference = other.offset().minus(mostLikely);
            double e = difference.east().arcminutes();
            double u = difference.up().arcminutes();
            east += other.probability() * e;
            up += other.probability() * u;
            eastEast += other.probability() * e * e;
            eastUp += other.probability() * e * u;
            upUp += other.probability() * u * u;
        }
        return known.plus(new OffsetCovariance(eastEast - east * east, eastUp - east * up, upUp - up * up));
    }
}
