package polewright.axis.pointing;

import java.util.List;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import polewright.axis.AxisOffset;
import polewright.axis.OffsetCovariance;
import polewright.sky.angle.Angle;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.Site;

/**
 * What is known of a mount's errors.
 *
 * @param site where it stands
 * @param terms the likeliest values
 * @param covariance of all terms, in the order of {@link PointingTerm}, radians²
 * @param centrings what it was learned from
 */
public record PointingModel(Site site, TermValues terms, RealMatrix covariance, List<Centring> centrings) {
    private static final double RAD2_PER_ARCMIN2 = Math.pow(Math.PI / (180 * 60), 2);

    public PointingModel {
        centrings = List.copyOf(centrings);
    }

    /** Before any star was centred. */
    public static PointingModel unknown(Site site) {
        double[] variances = new double[PointingTerm.values().length];
        for (PointingTerm term : PointingTerm.values()) {
            variances[term.column()] = Math.pow(term.usualSize().radians(), 2);
        }
        return new PointingModel(site, TermValues.NONE, MatrixUtils.createRealDiagonalMatrix(variances), List.of());
    }

    /** How far from the middle a go-to there is to be expected to land. */
    public GoToError goToError(HourAnglePlace place) {
        RealMatrix design = PointingFit.design(site, terms, new MountReading(place.hourAngle(), place.declination()));
        RealMatrix spread = design.multiply(covariance).multiply(design.transpose());
        double usual = Math.sqrt(spread.getEntry(0, 0) + spread.getEntry(1, 1));
        return new GoToError(new Angle(usual), new Angle(usual * 1.73));
    }

    /** What it would be after one more star was centred there, wherever that is found to be. */
    public PointingModel after(HourAnglePlace place, Angle sigma) {
        RealMatrix design = PointingFit.design(site, terms, new MountReading(place.hourAngle(), place.declination()));
        RealMatrix noise = MatrixUtils.createRealIdentityMatrix(2).scalarMultiply(Math.pow(sigma.radians(), 2));
        RealMatrix innovation =
                design.multiply(covariance).multiply(design.transpose()).add(noise);
        RealMatrix gain = covariance.multiply(design.transpose()).multiply(MatrixUtils.inverse(innovation));
        RealMatrix left = covariance.subtract(gain.multiply(design).multiply(covariance));
        return new PointingModel(site, terms, left, centrings);
    }

    public AxisOffset axisOffset() {
        return terms.axisOffset();
    }

    public OffsetCovariance axisCovariance() {
        int east = PointingTerm.AXIS_EAST.column();
        int up = PointingTerm.AXIS_UP.column();
        return new OffsetCovariance(
                covariance.getEntry(east, east) / RAD2_PER_ARCMIN2,
                covariance.getEntry(east, up) / RAD2_PER_ARCMIN2,
                covariance.getEntry(up, up) / RAD2_PER_ARCMIN2);
    }
}
