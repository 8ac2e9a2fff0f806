package polewright.bench.independent;

import polewright.alignment.fix.Fix;
import polewright.bench.independent.truth.Offset;
import polewright.mount.AxisOffset;

/** The 95 % region of a fix. */
final class StatedRegion {
    /** χ² with two degrees of freedom at 0.05 (handbook tables). */
    private static final double CHI_SQUARED_95 = 5.991;

    private StatedRegion() {}

    static boolean holds(Fix fix, Offset truth) {
        return squaredSigmas(fix, truth) <= CHI_SQUARED_95;
    }

    /** Squared distance of a place from the fix, normalised by its covariance. */
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
