package polewright.axis.advice;

import polewright.axis.OffsetCovariance;

/**
 * What a sighting would tell of the offset: its information matrix, arcmin⁻².
 *
 * @param ee of east
 * @param eu of both
 * @param uu of up
 */
record Information(double ee, double eu, double uu) {
    static final Information NONE = new Information(0, 0, 0);

    /** One figure that is {@code east} · offset east + {@code up} · offset up, with this sigma. */
    static Information ofRow(double east, double up, double sigma) {
        double weight = 1 / (sigma * sigma);
        return new Information(east * east * weight, east * up * weight, up * up * weight);
    }

    /** Both directions alike, to this sigma. */
    static Information ofBoth(double sigmaArcmin) {
        double weight = 1 / (sigmaArcmin * sigmaArcmin);
        return new Information(weight, 0, weight);
    }

    /** How much of it is of east and west, 0 to 1; the rest is of the axis's height. */
    double eastShare() {
        return ee / (ee + uu);
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

    /** Natural logarithm of what it divides the total variance by. */
    double narrowing(OffsetCovariance before) {
        OffsetCovariance after = after(before);
        return Math.log(
                (before.eastEastArcmin2() + before.upUpArcmin2()) / (after.eastEastArcmin2() + after.upUpArcmin2()));
    }
}
