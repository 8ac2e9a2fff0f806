package polewright.alignment.fix;

import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;

/**
 * The uncertainty that screw turns add to the axis because the screw parameters are not exactly known: both gains, and
 * the cross-gains due to a leaning base and a hinge that is out of square. All of it comes from the covariance of the
 * state.
 *
 * <p>It can be evaluated for an axis that will be better known by then. Information about the axis also constrains the
 * screws, as far as the two are correlated in the state: with x the offset and g the four screw parameters, g = B x +
 * r, where r is uncorrelated with x; a sighting changes x alone. The noise that {@link Motion} adds for hand turns and
 * long moves is not included.
 */
public final class TurnScatter {
    private static final int[] OFFSET = {AxisState.AZIMUTH, AxisState.ALTITUDE};
    private static final int[] SCREWS = {
        AxisState.AZIMUTH_GAIN,
        AxisState.ALTITUDE_GAIN,
        AxisState.AZIMUTH_INTO_ALTITUDE,
        AxisState.ALTITUDE_INTO_AZIMUTH
    };

    private final ScrewGains gains;
    private final double eastPerAzimuth;
    // B, per arcminute of offset, a row for each of SCREWS; and the covariance of r.
    private final double[][] withOffset;
    private final double[][] rest;

    private TurnScatter(ScrewGains gains, double eastPerAzimuth, double[][] withOffset, double[][] rest) {
        this.gains = gains;
        this.eastPerAzimuth = eastPerAzimuth;
        this.withOffset = withOffset;
        this.rest = rest;
    }

    /** The scatter of turns made from this state. */
    public static TurnScatter of(AxisState state) {
        double eastPerAzimuth = Motion.eastPerAzimuth(state.site());
        RealMatrix all = state.covariance();
        double arcminutes = 60 * Math.toDegrees(1);
        RealMatrix toOffset =
                MatrixUtils.createRealDiagonalMatrix(new double[] {eastPerAzimuth * arcminutes, arcminutes});
        RealMatrix offset = toOffset.multiply(all.getSubMatrix(OFFSET, OFFSET)).multiply(toOffset);
        RealMatrix both = all.getSubMatrix(SCREWS, OFFSET).multiply(toOffset);
        RealMatrix withOffset = both.multiply(MatrixUtils.inverse(offset));
        RealMatrix rest = all.getSubMatrix(SCREWS, SCREWS).subtract(withOffset.multiplyTransposed(both));
        return new TurnScatter(state.gains(), eastPerAzimuth, withOffset.getData(), rest.getData());
    }

    /**
     * Covariance of the offset after turns.
     *
     * @param known covariance of the offset when the turns are made
     * @param move from the estimated offset then to the offset that the turns aim for
     */
    public OffsetCovariance after(OffsetCovariance known, AxisOffset move) {
        double azimuthMove = move.east().arcminutes() / eastPerAzimuth;
        double altitudeMove = move.up().arcminutes();
        double determinant = gains.azimuthFactor() * gains.altitudeFactor()
                - gains.azimuthIntoAltitude() * gains.altitudeIntoAzimuth();
        // The nominal move of each screw, which with the estimated gains adds up to the whole move.
        double a = (gains.altitudeFactor() * azimuthMove - gains.altitudeIntoAzimuth() * altitudeMove) / determinant;
        double h = (gains.azimuthFactor() * altitudeMove - gains.azimuthIntoAltitude() * azimuthMove) / determinant;
        double[] east = {eastPerAzimuth * a, 0, 0, eastPerAzimuth * h};
        double[] up = {0, h, a, 0};
        double eastOfEast = 1 + column(east, 0);
        double eastOfUp = column(east, 1);
        double upOfEast = column(up, 0);
        double upOfUp = 1 + column(up, 1);
        double ee = known.eastEastArcmin2();
        double eu = known.eastUpArcmin2();
        double uu = known.upUpArcmin2();
        return new OffsetCovariance(
                eastOfEast * eastOfEast * ee
                        + 2 * eastOfEast * eastOfUp * eu
                        + eastOfUp * eastOfUp * uu
                        + form(east, east),
                eastOfEast * upOfEast * ee
                        + (eastOfEast * upOfUp + eastOfUp * upOfEast) * eu
                        + eastOfUp * upOfUp * uu
                        + form(east, up),
                upOfEast * upOfEast * ee + 2 * upOfEast * upOfUp * eu + upOfUp * upOfUp * uu + form(up, up));
    }

    private double column(double[] perScrew, int offset) {
        double sum = 0;
        for (int i = 0; i < perScrew.length; i++) {
            sum += perScrew[i] * withOffset[i][offset];
        }
        return sum;
    }

    private double form(double[] left, double[] right) {
        double sum = 0;
        for (int i = 0; i < left.length; i++) {
            for (int j = 0; j < right.length; j++) {
                sum += left[i] * rest[i][j] * right[j];
            }
        }
        return sum;
    }
}
