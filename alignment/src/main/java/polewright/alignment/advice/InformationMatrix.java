package polewright.alignment.advice;

import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;

/**
 * What a sighting would tell of the offset: its information matrix, arcmin⁻².
 *
 * @param ee of east
 * @param eu of both
 * @param uu of up
 */
record InformationMatrix(double ee, double eu, double uu) {
    static final InformationMatrix NONE = new InformationMatrix(0, 0, 0);

    /** One figure that is {@code east} · offset east + {@code up} · offset up, with this sigma. */
    static InformationMatrix ofRow(double east, double up, double sigma) {
        double weight = 1 / (sigma * sigma);
        return new InformationMatrix(east * east * weight, east * up * weight, up * up * weight);
    }

    /** Both directions alike, to this sigma. */
    static InformationMatrix ofBoth(double sigmaArcmin) {
        double weight = 1 / (sigmaArcmin * sigmaArcmin);
        return new InformationMatrix(weight, 0, weight);
    }

    /** What is left of an uncertainty. */
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
     * How far apart two places of the axis look in such a sighting, squared, in sigmas of the sighting and of what is known of
     * each place.
     */
    double separation(AxisOffset apart, OffsetCovariance before) {
        double east = apart.east().arcminutes();
        double up = apart.up().arcminutes();
        // (I⁻¹ + C)⁻¹ = I (1 + C I)⁻¹, also where I has no inverse.
        double a = 1 + before.eastEastArcmin2() * ee + before.eastUpArcmin2() * eu;
        double b = before.eastEastArcmin2() * eu + before.eastUpArcmin2() * uu;
        double c = before.eastUpArcmin2() * ee + before.upUpArcmin2() * eu;
        double d = 1 + before.eastUpArcmin2() * eu + before.upUpArcmin2() * uu;
        double determinant = a * d - b * c;
        double x = (d * east - b * up) / determinant;
        double y = (a * up - c * east) / determinant;
        // x, y is (1 + C I)⁻¹ apart: the form is apart · I · that.
        return east * (ee * x + eu * y) + up * (eu * x + uu * y);
    }

    /** Natural logarithm of what it divides the total variance by. */
    double narrowing(OffsetCovariance before) {
        OffsetCovariance after = after(before);
        return Math.log(
                (before.eastEastArcmin2() + before.upUpArcmin2()) / (after.eastEastArcmin2() + after.upUpArcmin2()));
    }
}
