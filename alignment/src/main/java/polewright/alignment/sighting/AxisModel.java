package polewright.alignment.sighting;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.mount.AxisEstimate;

/**
 * The measurement model of one sighting: the residual for a trial axis.
 *
 * <p>The stars' directions are computed beforehand, so an evaluation is a few multiplications and has no side effects.
 */
public interface AxisModel {
    /** Number of independent components of the sighting: 1 or 2. */
    int size();

    /**
     * Predicted minus measured, each divided by its standard deviation.
     *
     * @param elevatedEnd ENU unit vector of the trial axis, the end toward the elevated pole
     * @return {@link #size()} components, of unit variance if the trial axis is the true one
     */
    double[] residual(Vector3D elevatedEnd);

    /** A direct estimate of the axis with its uncertainty. */
    static AxisModel of(AxisEstimate estimate) {
        return new AxisModel() {
            @Override
            public int size() {
                return 2;
            }

            @Override
            public double[] residual(Vector3D elevatedEnd) {
                return estimate.normalisedDistance(elevatedEnd);
            }
        };
    }

    /** A sighting with one component. */
    static AxisModel ofOne(java.util.function.ToDoubleFunction<Vector3D> residual) {
        return new AxisModel() {
            @Override
            public int size() {
                return 1;
            }

            @Override
            public double[] residual(Vector3D elevatedEnd) {
                return new double[] {residual.applyAsDouble(elevatedEnd)};
            }
        };
    }
}
