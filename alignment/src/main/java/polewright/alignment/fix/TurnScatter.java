package polewright.alignment.fix;

import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;

/**
 * How uncertain turns of the screws leave the axis, because what they do is not quite known: both effects, and what a
 * leaning base and a hinge that is not square let each screw do to the other's direction. All of it is the state's own
 * covariance; nothing is drawn up anew.
 *
 * <p>It can be asked for an axis that will be known better by then. Whatever tells more of where the axis is tells of the
 * screws too, as far as the two hang together in the state: with x the offset and g the screws' four figures, g = B x + r,
 * where r has nothing to do with x; a sighting changes x alone. What {@link Motion} adds for hands and long ways is left
 * out.
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

    /** What turns from this state would do. */
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
     * @param known how well the offset is known when they are made
     * @param way from where it is taken to be then, to where the turns are to bring it
     */
    public OffsetCovariance after(OffsetCovariance known, AxisOffset way) {
        double azimuthWay = way.east().arcminutes() / eastPerAzimuth;
        double altitudeWay = way.up().arcminutes();
        double determinant = gains.azimuthFactor() * gains.altitudeFactor()
                - gains.azimuthIntoAltitude() * gains.altitudeIntoAzimuth();
        // What is asked of each screw: with the figures as they are known, together the way.
        double a = (gains.altitudeFactor() * azimuthWay - gains.altitudeIntoAzimuth() * altitudeWay) / determinant;
        double h = (gains.azimuthFactor() * altitudeWay - gains.azimuthIntoAltitude() * azimuthWay) / determinant;
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
