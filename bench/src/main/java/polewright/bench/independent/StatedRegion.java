package polewright.bench.independent;

import polewright.alignment.fix.Fix;
import polewright.bench.independent.truth.Offset;
import polewright.mount.AxisOffset;

/** Where a fix says that the axis is, with 95 %. */
final class StatedRegion {
    /** χ² with two degrees of freedom at 0.05 (handbook tables). */
    private static final double CHI_SQUARED_95 = 5.991;

    private StatedRegion() {}

    static boolean holds(Fix fix, Offset truth) {
        return squaredSigmas(fix, truth) <= CHI_SQUARED_95;
    }

    /** The distance of a place from where the fix has the axis, over its uncertainty, squared. */
    static double squaredSigmas(Fix fix, Offset place) {
        AxisOffset believed = fix.state().offset();
        return fix.state()
                .offsetCovariance()
                .normalisedSquare(AxisOffset.ofArcminutes(place.eastArcmin(), place.upArcmin())
                        .minus(believed));
    }

    static Offset believed(Fix fix) {
        AxisOffset believed = fix.state().offset();
        return new Offset(believed.east().arcminutes(), believed.up().arcminutes());
    }
}
