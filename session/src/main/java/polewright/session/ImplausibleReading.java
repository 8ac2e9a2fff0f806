package polewright.session;

import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealVector;
import org.hipparchus.linear.SingularValueDecomposition;
import polewright.alignment.sighting.AxisModel;
import polewright.alignment.sighting.Misreading;
import polewright.alignment.sighting.Sighting;
import polewright.mount.AxisPointing;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/**
 * A sighting that would put the axis farther from the pole than any mount is set up.
 *
 * @param east the smallest consistent offset on the sky, east component, east positive
 * @param up the same, up positive
 * @param cause completes "it would fit if …", for a usual mistake that explains it
 */
public record ImplausibleReading(Angle east, Angle up, Optional<String> cause) {
    /**
     * A first setting by compass and scale is seldom farther off than this: just under two sigmas of the prior of a
     * night ({@code AxisState.PRIOR_SIGMA}).
     */
    public static final Angle FAR = Angle.ofDegrees(15);

    private static final double SIGMAS = 2;
    private static final double STEP_RAD = 1e-5;

    /**
     * Whether a sighting is that far off.
     *
     * @param now the current estimate of the axis: a reading no farther from that is not questioned
     * @return also empty for a sighting that is impossible, which is refused elsewhere
     */
    public static Optional<ImplausibleReading> of(Sighting sighting, NightEvent.Begun begun, AxisPointing now) {
        AxisPointing pole = AxisPointing.atPole(begun.site());
        try {
            if (least(sighting, begun, now).isEmpty()) {
                return Optional.empty();
            }
            return least(sighting, begun, pole)
                    .map(offset -> new ImplausibleReading(
                            new Angle(offset.getEntry(0)),
                            new Angle(offset.getEntry(1)),
                            sighting.misreadings().stream()
                                    .filter(mistake -> isNear(mistake, begun, pole))
                                    .map(Misreading::cause)
                                    .findFirst()));
        } catch (InputRefused impossible) {
            return Optional.empty();
        }
    }

    public Angle distance() {
        return new Angle(Math.hypot(east.radians(), up.radians()));
    }

    private static boolean isNear(Misreading mistake, NightEvent.Begun begun, AxisPointing axis) {
        try {
            return least(mistake.meant(), begun, axis).isEmpty();
        } catch (InputRefused impossible) {
            return false;
        }
    }

    /**
     * The smallest (east, up) offset from an axis that is consistent with a sighting, radians; empty if it is not far.
     */
    private static Optional<RealVector> least(Sighting sighting, NightEvent.Begun begun, AxisPointing axis) {
        AxisModel model = sighting.model(begun.site(), begun.weather());
        Vector3D from = axis.elevatedEnd();
        Vector3D east = Vector3D.crossProduct(from, Vector3D.PLUS_K)
                .normalize()
                .scalarMultiply(begun.site().hemisphereSign());
        Vector3D up = towardZenith(from);
        double[] here = model.residual(from);
        double[][] rows = new double[model.size()][2];
        for (int i = 0; i < rows.length; i++) {
            rows[i][0] = slope(model, from, east, i);
            rows[i][1] = slope(model, from, up, i);
        }
        RealVector residual = new ArrayRealVector(here);
        RealVector offset = new SingularValueDecomposition(new Array2DRowRealMatrix(rows))
                .getSolver()
                .solve(residual.mapMultiply(-1));
        double sigma = offset.getNorm() / residual.getNorm();
        return offset.getNorm() > FAR.radians() + SIGMAS * sigma ? Optional.of(offset) : Optional.empty();
    }

    private static Vector3D towardZenith(Vector3D from) {
        return Vector3D.PLUS_K.subtract(from.scalarMultiply(from.getZ())).normalize();
    }

    /** The smaller of the two one-sided derivatives, because an angle may jump by a whole turn on one side. */
    private static double slope(AxisModel model, Vector3D from, Vector3D direction, int figure) {
        DoubleUnaryOperator at =
                step -> model.residual(from.add(direction.scalarMultiply(step)).normalize())[figure];
        double after = (at.applyAsDouble(STEP_RAD) - at.applyAsDouble(0)) / STEP_RAD;
        double before = (at.applyAsDouble(0) - at.applyAsDouble(-STEP_RAD)) / STEP_RAD;
        return Math.abs(after) < Math.abs(before) ? after : before;
    }
}
