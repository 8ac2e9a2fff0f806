package polewright.alignment.advice;

import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;

/**
 * The information matrix of a sighting for the axis offset, arcmin⁻².
 *
 * @param ee east, east
 * @param eu east, up
 * @param uu up, up
 */
record InformationMatrix(double ee, double eu, double uu) {
    static final InformationMatrix NONE = new InformationMatrix(0, 0, 0);

    /** A scalar measurement of {@code east} · offset east + {@code up} · offset up, with this sigma in arcminutes. */
    static InformationMatrix ofRow(double east, double up, double sigma) {
        double weight = 1 / (sigma * sigma);
        return new InformationMatrix(east * east * weight, east * up * weight, up * up * weight);
    }

    /** Both directions measured independently to this sigma. */
    static InformationMatrix ofBoth(double sigmaArcmin) {
        double weight = 1 / (sigmaArcmin * sigmaArcmin);
        return new InformationMatrix(weight, 0, weight);
    }

    /** The posterior covariance for a prior covariance. */
    OffsetCovariance after(OffsetCovariance before) {
        double determinant =
                before.eastEastArcmin2() * before.upUpArcmin2() - before.eastUpArcmin2() * before.eastUpArcmin2();
        double east = before.upUpArcmin2() / determinant + ee;
        double up = before.eastEastArcmin2() / determinant + uu;
        double both = -before.eastUpArcmin2() / determinant + eu;
        double d = east * up - both * both;
        return new OffsetCovariance(up / d, -both / d, east / d);
    }

    /**
     * Squared separation of two places of the axis in this sighting, normalised by the uncertainty of the sighting and
     * of the two places.
     */
    double separation(AxisOffset difference, OffsetCovariance before) {
        double east = difference.east().arcminutes();
        double up = difference.up().arcminutes();
        // (I⁻¹ + C)⁻¹ = I (1 + C I)⁻¹, which holds even if I is singular.
        double a = 1 + before.eastEastArcmin2() * ee + before.eastUpArcmin2() * eu;
        double b = before.eastEastArcmin2() * eu + before.eastUpArcmin2() * uu;
        double c = before.eastUpArcmin2() * ee + before.upUpArcmin2() * eu;
        double d = 1 + before.eastUpArcmin2() * eu + before.upUpArcmin2() * uu;
        double determinant = a * d - b * c;
        double x = (d * east - b * up) / determinant;
        double y = (a * up - c * east) / determinant;
        // (x, y) is (1 + C I)⁻¹ d with d the difference; the result is dᵀ I (x, y).
        return east * (ee * x + eu * y) + up * (eu * x + uu * y);
    }

    /** Natural logarithm of the factor by which it reduces the total variance. */
    double narrowing(OffsetCovariance before) {
        OffsetCovariance after = after(before);
        return Math.log(
                (before.eastEastArcmin2() + before.upUpArcmin2()) / (after.eastEastArcmin2() + after.upUpArcmin2()));
    }
}
