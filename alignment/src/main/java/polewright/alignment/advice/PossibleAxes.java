package polewright.alignment.advice;

import java.util.List;
import java.util.function.ToDoubleFunction;
import polewright.alignment.fix.Fix;
import polewright.alignment.fix.ScrewSenses;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;

/**
 * Where the axis may be: at the fix, or somewhere else while it is not known which way a screw took it.
 *
 * @param likeliest the fix
 * @param known covariance about each of the places
 * @param others the other places, each with its probability
 */
public record PossibleAxes(AxisOffset likeliest, OffsetCovariance known, List<ScrewSenses.Otherwise> others) {
    public PossibleAxes {
        others = List.copyOf(others);
    }

    public static PossibleAxes of(Fix fix) {
        return new PossibleAxes(
                fix.state().offset(),
                fix.state().offsetCovariance(),
                fix.senses().otherwise());
    }

    /** What may be expected of a probability that depends on where the axis is. */
    double expected(ToDoubleFunction<AxisOffset> probability) {
        double sum = 0;
        double elsewhere = 0;
        for (ScrewSenses.Otherwise other : others) {
            sum += other.probability() * probability.applyAsDouble(other.offset());
            elsewhere += other.probability();
        }
        return sum + (1 - elsewhere) * probability.applyAsDouble(likeliest);
    }

    /** How far the other places lie from the fix in the mean square, over how far each is uncertain itself. */
    double spread() {
        double square = 0;
        for (ScrewSenses.Otherwise other : others) {
            double apart = other.offset().minus(likeliest).distance().arcminutes();
            square += other.probability() * apart * apart;
        }
        return square / (known.eastEastArcmin2() + known.upUpArcmin2());
    }

    /** The mean of all the places, each by its probability. */
    public AxisOffset mean() {
        double east = likeliest.east().arcminutes();
        double up = likeliest.up().arcminutes();
        for (ScrewSenses.Otherwise other : others) {
            AxisOffset apart = other.offset().minus(likeliest);
            east += other.probability() * apart.east().arcminutes();
            up += other.probability() * apart.up().arcminutes();
        }
        return AxisOffset.ofArcminutes(east, up);
    }

    /** Covariance of all the places together, about their mean. */
    public OffsetCovariance together() {
        double east = 0;
        double up = 0;
        double eastEast = 0;
        double eastUp = 0;
        double upUp = 0;
        for (ScrewSenses.Otherwise other : others) {
            AxisOffset apart = other.offset().minus(likeliest);
            double e = apart.east().arcminutes();
            double u = apart.up().arcminutes();
            east += other.probability() * e;
            up += other.probability() * u;
            eastEast += other.probability() * e * e;
            eastUp += other.probability() * e * u;
            upUp += other.probability() * u * u;
        }
        return known.plus(new OffsetCovariance(eastEast - east * east, eastUp - east * up, upUp - up * up));
    }
}
